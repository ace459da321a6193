// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <vector>

#include "thermal/film.h"
#include "thermal/run.h"
#include "water/water.h"

/// The peer: one closed ring of a heater's coil and a tube with its wall, by a plain method of lines. Third-order
/// upwind-biased fluxes in space (van Leer's kappa = 1/3), central dispersion and conduction, three-stage third-order
/// strong-stability-preserving Runge-Kutta in time (Shu & Osher 1988, J. Comput. Phys. 77, 439). Written for speed:
/// flat arrays, each layer one loop the compiler makes wide, coefficients reckoned once, no limiter, no temperature
/// in any coefficient.
namespace tapward::bench {

struct Ring {
    thermal::Stretch tube;    ///< round, from the coil's outlet to its inlet
    double coilWater_m3 = 0.4e-3, coilMetal_J_K = 1600, coilBore_m = 0.012;
    double flow_m3s = 3.03e-5;
    double start_C = 21;
    double lit_s = 4, out_s = 50, heat_W = 4200;  ///< at that heat from the one to the other
};

class Peer {
public:
    static constexpr std::size_t kMostLayers = 8;

    Peer(const Ring& ring, double cell_m, int layers) : m_ring(ring), m_layers(static_cast<std::size_t>(layers))
    {
        using std::numbers::pi;
        const thermal::Stretch& s = ring.tube;
        const double rhoC = water::referenceVolumeHeat();
        const double held_m3 = ring.coilWater_m3 + ring.coilMetal_J_K / rhoC;
        const double coil_m = ring.coilWater_m3 / (0.25 * pi * ring.coilBore_m * ring.coilBore_m);
        m_coil = std::max<std::size_t>(static_cast<std::size_t>(std::lround(coil_m / cell_m)), 2);
        const auto tube = static_cast<std::size_t>(std::lround(s.length_m / cell_m));
        m_cells = m_coil + tube;
        const double dx = s.length_m / static_cast<double>(tube);
        const double area = 0.25 * pi * s.bore_m * s.bore_m;
        m_inverse.assign(m_cells, 1 / (area * dx));
        std::fill_n(m_inverse.begin(), m_coil, static_cast<double>(m_coil) / held_m3);
        for (const auto& [bore, length, from, count, step, way] :
             {std::tuple{ring.coilBore_m, coil_m, std::size_t{0}, m_coil, coil_m / static_cast<double>(m_coil),
                         0.25 * pi * ring.coilBore_m * ring.coilBore_m},
              std::tuple{s.bore_m, s.length_m, m_coil, tube, dx, area}}) {
            const double k = thermal::axialDispersion(ring.flow_m3s, bore, length, 40) * way / step;
            m_disperse.insert(m_disperse.end(), count, k);
            m_disperse[from] = 0;  // nothing between coil and tube
        }
        // The wall: thin layers near the water, film and conduction in series, 10 W/(m² K) outside.
        double sum = 0, next = 1;
        std::array<double, kMostLayers> thickness{};
        for (std::size_t n = 0; n < m_layers; ++n, next *= 1.6) {
            thickness[n] = next;
            sum += next;
        }
        double radius = 0.5 * s.bore_m, middleBefore = radius;
        const double film = thermal::insideFilm(ring.flow_m3s, s.bore_m, 40) * pi * s.bore_m;
        for (std::size_t n = 0; n < m_layers; ++n) {
            const double outer = radius + thickness[n] * s.wall_m / sum, middle = 0.5 * (radius + outer);
            const double shell = std::log(middle / middleBefore) / (2 * pi * s.wallConductivity);
            const double heat = pi * (outer * outer - radius * radius) * s.wallVolumeHeat;
            m_link[n] = 1 / (n == 0 ? 1 / film + shell : shell);
            m_layerHeat[n] = 1 / heat;
            radius = outer;
            middleBefore = middle;
        }
        const double outside =
            1 / (10 * 2 * pi * radius) + std::log(radius / middleBefore) / (2 * pi * s.wallConductivity);
        m_loss = 1 / outside;
        m_waterHeat = 1 / (rhoC * area);
        m_now.assign((m_layers + 1) * m_cells, ring.start_C);
        m_before = m_rate = m_now;
        m_padded.assign(m_cells + 4, 0);
        m_flux.assign(m_cells + 1, 0);
    }

    std::size_t cells() const { return m_cells; }

    /// Longest step that is stable, with a little to spare.
    double stableStep_s() const
    {
        double most = 0;
        for (std::size_t i = 0; i < m_cells; ++i)
            most = std::max(most, m_inverse[i] * (m_ring.flow_m3s / 1.6 + 4 * m_disperse[i] / 2.5));
        double wall = 0;
        for (std::size_t n = 0; n < m_layers; ++n)
            wall = std::max(wall, m_layerHeat[n] * (m_link[n] + (n + 1 < m_layers ? m_link[n + 1] : m_loss)) * 2 / 2.5);
        return 0.95 / std::max(most, wall);
    }

    void step(double dt_s, double heat_W)
    {
        const std::size_t n = m_now.size();
        const double* const rate = m_rate.data();
        double* const now = m_now.data();
        std::copy_n(now, n, m_before.data());
        const double* const before = m_before.data();
        rates(heat_W);
        for (std::size_t i = 0; i < n; ++i)
            now[i] += dt_s * rate[i];
        rates(heat_W);
        for (std::size_t i = 0; i < n; ++i)
            now[i] = 0.75 * before[i] + 0.25 * (now[i] + dt_s * rate[i]);
        rates(heat_W);
        for (std::size_t i = 0; i < n; ++i)
            now[i] = before[i] / 3 + 2.0 / 3 * (now[i] + dt_s * rate[i]);
    }

    double coilOutlet_C() const { return face(m_coil); }
    double coilInlet_C() const { return face(m_cells); }
    /// This far along the tube.
    double at_C(double share) const
    {
        const double place = share * static_cast<double>(m_cells - m_coil) - 0.5;
        const auto i = static_cast<std::size_t>(place);
        const double w = place - static_cast<double>(i);
        const double* t = m_now.data() + m_coil + i;
        // Cubic through four centres.
        return -w * (w - 1) * (w - 2) / 6 * t[-1] + (w + 1) * (w - 1) * (w - 2) / 2 * t[0]
               - (w + 1) * w * (w - 2) / 2 * t[1] + (w + 1) * w * (w - 1) / 6 * t[2];
    }

private:
    /// Water at the upstream side of this cell.
    double face(std::size_t cell) const
    {
        const double* t = m_now.data();
        const std::size_t n = m_cells;
        return (2 * t[cell % n] + 5 * t[(cell + n - 1) % n] - t[(cell + n - 2) % n]) / 6;
    }

    void rates(double heat_W)
    {
        const double* const t = m_now.data();
        double* const p = m_padded.data() + 2;
        std::copy_n(t, m_cells, p);
        p[-2] = t[m_cells - 2];
        p[-1] = t[m_cells - 1];
        p[m_cells] = t[0];
        double* const flux = m_flux.data();
        const double* const k = m_disperse.data();
        const double flow = m_ring.flow_m3s;
        for (std::size_t i = 0; i < m_cells; ++i)  // into cell i
            flux[i] = flow * (2 * p[i] + 5 * p[i - 1] - p[i - 2]) * (1.0 / 6) - k[i] * (p[i] - p[i - 1]);
        flux[m_cells] = flux[0];
        double* const water = m_rate.data();
        const double* const inverse = m_inverse.data();
        for (std::size_t i = 0; i < m_cells; ++i)
            water[i] = (flux[i] - flux[i + 1]) * inverse[i];
        const double warm = heat_W / water::referenceVolumeHeat() / static_cast<double>(m_coil);
        for (std::size_t i = 0; i < m_coil; ++i)
            water[i] += warm * inverse[i];
        for (std::size_t n = 0; n < m_layers; ++n) {
            const double* const in = t + n * m_cells;
            const double* const own = in + m_cells;
            double* const out = m_rate.data() + (n + 1) * m_cells;
            const bool last = n + 1 == m_layers;
            const double* const next = last ? own : own + m_cells;
            const double a = m_link[n] * m_layerHeat[n], b = (last ? m_loss : m_link[n + 1]) * m_layerHeat[n];
            const double bay = m_ring.start_C;
            if (last)
                for (std::size_t i = m_coil; i < m_cells; ++i)
                    out[i] = a * (in[i] - own[i]) + b * (bay - own[i]);
            else
                for (std::size_t i = m_coil; i < m_cells; ++i)
                    out[i] = a * (in[i] - own[i]) + b * (next[i] - own[i]);
            std::fill_n(out, m_coil, 0.0);
            if (n == 0)
                for (std::size_t i = m_coil; i < m_cells; ++i)
                    water[i] += m_link[0] * m_waterHeat * (own[i] - in[i]);
        }
    }

    Ring m_ring;
    std::size_t m_layers, m_coil = 0, m_cells = 0;
    std::array<double, kMostLayers> m_link{}, m_layerHeat{};
    double m_loss = 0, m_waterHeat = 0;
    std::vector<double> m_inverse, m_disperse, m_now, m_before, m_rate, m_padded, m_flux;
};

}  // namespace tapward::bench
