// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/plant.h"

#include <algorithm>
#include <map>
#include <numeric>

namespace tapward::study {
namespace {

using document::PartId;

constexpr int kOutsideVertex = -1;

/// Tubing and hoses between a demand pump and the taps give a little; without an accumulator this is all
/// that lets the pressure switch see a pressure at all. From memory: about 5 mL per 100 kPa.
constexpr double kTubingCompliance_m3_Pa = 5e-11;

/// One path of a part between two vertices of the port graph.
struct Edge {
    int u, v;              ///< vertices, kOutsideVertex for the outside
    std::size_t part;      ///< index into plant.parts
    std::size_t path;
    double rise_m = 0;
    bool used = false;
};

class Builder {
public:
    Builder(const document::Drawing& drawing, document::View view) : m_drawing(drawing), m_view(view) {}

    Result<Plant> build()
    {
        for (const document::Part& part : m_drawing.parts) {
            const parts::PartKind& kind = document::kindOf(part);
            if (!kind.model || !document::isPresent(part.stage, m_view)) {
                continue;
            }
            auto model = kind.model(document::values(part));
            if (!model) {
                Problem why = model.error();
                why.where = part.tag;
                return tl::unexpected(std::move(why));
            }
            PlantPart plantPart;
            plantPart.id = part.id;
            plantPart.part = &part;
            plantPart.model = std::move(*model);
            plantPart.places.resize(plantPart.model.paths.size());
            plantPart.portJunction.assign(kind.isPipe ? 2 : kind.ports.size(), -1);
            m_plant.parts.push_back(std::move(plantPart));
        }
        addCompliance();
        makeVertices();
        makeEdges();
        makeChains();
        findOpenEnds();
        return std::move(m_plant);
    }

private:
    /// A demand pump without an accumulator in the drawing gets the give of its tubing.
    void addCompliance()
    {
        bool accumulator = false;
        for (const PlantPart& part : m_plant.parts) {
            accumulator = accumulator || part.model.role == parts::Role::Accumulator;
        }
        for (PlantPart& part : m_plant.parts) {
            if (part.model.role != parts::Role::DemandPump || accumulator) {
                continue;
            }
            const int outlet = document::kindOf(*part.part).portIndex("outlet");
            parts::Path give;
            give.from = parts::Path::kOutside;
            give.to = outlet;
            network::SourceLaw law;
            law.oneWay = false;
            law.slope_Pa_per_m3s = 1e6;
            give.laws.push_back(law);
            part.model.paths.push_back(give);
            part.places.emplace_back();
            if (part.model.supply && part.model.supply->compliance_m3_Pa <= 0) {
                part.model.supply->compliance_m3_Pa = kTubingCompliance_m3_Pa;
            }
        }
    }

    int newVertex(double height_m)
    {
        m_parent.push_back(static_cast<int>(m_parent.size()));
        m_height.push_back(height_m);
        return m_parent.back();
    }

    int root(int vertex)
    {
        while (m_parent[vertex] != vertex) {
            m_parent[vertex] = m_parent[m_parent[vertex]];
            vertex = m_parent[vertex];
        }
        return vertex;
    }

    /// One vertex per port of a present part, one per hub, one per loose pipe end; absent in-line parts
    /// are bridged.
    void makeVertices()
    {
        for (const PlantPart& part : m_plant.parts) {
            const parts::PartKind& kind = document::kindOf(*part.part);
            if (kind.isPipe) {
                continue;
            }
            for (const parts::Port& port : kind.ports) {
                m_ports[{part.id, std::string(port.id)}] = newVertex(part.part->height_m);
            }
            for (const parts::Path& path : part.model.paths) {
                if ((path.from == parts::Path::kHub || path.to == parts::Path::kHub) && !m_hubs.contains(part.id)) {
                    m_hubs[part.id] = newVertex(part.part->height_m);
                }
            }
        }
        // Pipe ends on absent parts meet in a vertex of that port; a part with exactly two of them is bridged.
        std::map<PartId, std::vector<int>> absent;
        for (const PlantPart& pipe : m_plant.parts) {
            if (!document::kindOf(*pipe.part).isPipe) {
                continue;
            }
            for (const document::PipeEnd& end : pipe.part->ends) {
                if (end.part == document::kNoPart || m_ports.contains({end.part, end.port})) {
                    continue;
                }
                const document::Part* part = m_drawing.find(end.part);
                const int vertex = newVertex(part ? part->height_m : 0);
                m_ports[{end.part, end.port}] = vertex;
                absent[end.part].push_back(vertex);
            }
        }
        for (const auto& [part, vertices] : absent) {
            if (vertices.size() == 2) {
                m_parent[root(vertices[0])] = root(vertices[1]);
            }
        }
    }

    void makeEdges()
    {
        for (std::size_t p = 0; p < m_plant.parts.size(); ++p) {
            const PlantPart& part = m_plant.parts[p];
            const parts::PartKind& kind = document::kindOf(*part.part);
            std::array<int, 2> ends{kOutsideVertex, kOutsideVertex};
            if (kind.isPipe) {
                for (std::size_t e = 0; e < 2; ++e) {
                    const document::PipeEnd& end = part.part->ends[e];
                    if (end.part != document::kNoPart) {
                        ends[e] = root(m_ports.at({end.part, end.port}));
                    } else {
                        // A loose end is a cap at the height of the other end.
                        const document::Part* other = m_drawing.find(part.part->ends[1 - e].part);
                        ends[e] = newVertex(other ? other->height_m : 0);
                    }
                }
            }
            for (std::size_t i = 0; i < part.model.paths.size(); ++i) {
                const parts::Path& path = part.model.paths[i];
                const auto vertex = [&](int place) {
                    if (place == parts::Path::kOutside) {
                        return kOutsideVertex;
                    }
                    if (place == parts::Path::kHub) {
                        return root(m_hubs.at(part.id));
                    }
                    if (kind.isPipe) {
                        return ends[static_cast<std::size_t>(place)];
                    }
                    return root(m_ports.at({part.id, std::string(kind.ports[static_cast<std::size_t>(place)].id)}));
                };
                Edge edge{vertex(path.from), vertex(path.to), p, i, 0, false};
                if (edge.u >= 0 && edge.v >= 0) {
                    edge.rise_m = m_height[edge.v] - m_height[edge.u];
                }
                m_edges.push_back(edge);
            }
        }
        m_at.resize(m_parent.size());
        for (std::size_t e = 0; e < m_edges.size(); ++e) {
            for (const int vertex : {m_edges[e].u, m_edges[e].v}) {
                if (vertex >= 0) {
                    m_at[vertex].push_back(e);
                }
            }
        }
    }

    bool isHeater(const Edge& edge) const
    {
        const parts::Role role = m_plant.parts[edge.part].model.role;
        return role == parts::Role::Tankless || role == parts::Role::StorageHeater;
    }

    /// A vertex where a chain must end: a join, a cap, or a heater's port.
    bool isJunction(int vertex) const
    {
        if (m_at[vertex].size() != 2) {
            return true;
        }
        return isHeater(m_edges[m_at[vertex][0]]) || isHeater(m_edges[m_at[vertex][1]]);
    }

    int junctionOf(int vertex)
    {
        if (vertex == kOutsideVertex) {
            return network::kOutside;
        }
        const auto [at, isNew] = m_junction.try_emplace(vertex, m_plant.junctions);
        if (isNew) {
            ++m_plant.junctions;
        }
        return at->second;
    }

    void makeChains()
    {
        // Chains that start at a junction or the outside, then what is left: rings without any junction.
        for (std::size_t e = 0; e < m_edges.size(); ++e) {
            Edge& edge = m_edges[e];
            if (edge.used) {
                continue;
            }
            if (edge.u == kOutsideVertex || isJunction(edge.u)) {
                follow(e, edge.u);
            } else if (edge.v == kOutsideVertex || isJunction(edge.v)) {
                follow(e, edge.v);
            }
        }
        for (std::size_t e = 0; e < m_edges.size(); ++e) {
            if (!m_edges[e].used) {
                m_ringStart = m_edges[e].u;
                follow(e, m_edges[e].u);
            }
        }
        for (PlantPart& part : m_plant.parts) {
            const parts::PartKind& kind = document::kindOf(*part.part);
            if (const auto hub = m_hubs.find(part.id); hub != m_hubs.end()) {
                const auto at = m_junction.find(root(hub->second));
                part.hubJunction = at == m_junction.end() ? -1 : at->second;
            }
            for (std::size_t port = 0; port < kind.ports.size() && !kind.isPipe; ++port) {
                const int vertex = root(m_ports.at({part.id, std::string(kind.ports[port].id)}));
                const auto at = m_junction.find(vertex);
                part.portJunction[port] = at == m_junction.end() ? -1 : at->second;
            }
        }
    }

    void follow(std::size_t first, int start)
    {
        const int index = static_cast<int>(m_plant.chains.size());
        Plant::Chain chain;
        chain.from = junctionOf(start);
        int vertex = start;
        std::size_t at = first;
        for (;;) {
            Edge& edge = m_edges[at];
            edge.used = true;
            const bool reversed = edge.u != vertex;
            append(chain, index, edge, reversed);
            vertex = reversed ? edge.u : edge.v;
            if (vertex == kOutsideVertex || isJunction(vertex) || vertex == m_ringStart) {
                break;
            }
            const std::size_t next = m_at[vertex][0] == at ? m_at[vertex][1] : m_at[vertex][0];
            if (m_edges[next].used) {
                break;
            }
            at = next;
        }
        chain.to = junctionOf(vertex);
        m_plant.chains.push_back(std::move(chain));
    }

    void append(Plant::Chain& chain, int index, const Edge& edge, bool reversed)
    {
        PlantPart& part = m_plant.parts[edge.part];
        const parts::Path& path = part.model.paths[edge.path];
        Place& place = part.places[edge.path];
        place.link = index;
        place.firstElement = static_cast<int>(chain.elements.size());
        place.reversed = reversed;
        place.stretchesBefore = static_cast<int>(chain.stretches.size());

        std::vector<network::Law> laws = path.laws;
        if (laws.empty()) {
            if (edge.rise_m != 0) {
                laws.push_back(network::ResistanceLaw{});
            }
        } else if (reversed) {
            std::reverse(laws.begin(), laws.end());
        }
        for (network::Law& law : laws) {
            network::Element element;
            element.law = std::move(law);
            element.reversed = reversed;
            // The whole rise goes with the first element; the water is the same along one part.
            element.rise_m = &law == &laws.front() ? (reversed ? -edge.rise_m : edge.rise_m) : 0;
            chain.elements.push_back(std::move(element));
            chain.elementParts.push_back(part.id);
        }
        place.elementCount = static_cast<int>(laws.size());
        if (path.body.length_m > 0 || path.body.volume_m3 > 0) {
            place.stretch = static_cast<int>(chain.stretches.size());
            chain.stretches.push_back(path.body);
            chain.stretches.back().topFirst = reversed;  // of a tank: its path begins at the bottom
            chain.stretchParts.push_back(part.id);
        }
        if (chain.partsInOrder.empty() || chain.partsInOrder.back() != part.id) {
            chain.partsInOrder.push_back(part.id);
        }
    }

    void findOpenEnds()
    {
        for (const PlantPart& part : m_plant.parts) {
            const parts::PartKind& kind = document::kindOf(*part.part);
            bool open = false;
            if (kind.isPipe) {
                for (const document::PipeEnd& end : part.part->ends) {
                    open = open || end.part == document::kNoPart;
                }
            } else if (!part.model.paths.empty()) {
                for (const parts::Port& port : kind.ports) {
                    const int vertex = root(m_ports.at({part.id, std::string(port.id)}));
                    open = open || (!port.optional && m_at[vertex].size() == 1);
                }
            }
            if (open) {
                m_plant.openEnds.push_back(part.id);
            }
        }
    }

    const document::Drawing& m_drawing;
    document::View m_view;
    Plant m_plant;
    std::map<std::pair<PartId, std::string>, int> m_ports;
    std::map<PartId, int> m_hubs;
    std::vector<int> m_parent;
    std::vector<double> m_height;
    std::vector<Edge> m_edges;
    std::vector<std::vector<std::size_t>> m_at;  ///< edges at a vertex
    std::map<int, int> m_junction;
    int m_ringStart = -2;
};

}  // namespace

PlantPart* Plant::find(document::PartId id)
{
    const auto at = std::lower_bound(parts.begin(), parts.end(), id,
                                     [](const PlantPart& part, PartId wanted) { return part.id < wanted; });
    return at != parts.end() && at->id == id ? &*at : nullptr;
}

const PlantPart* Plant::find(document::PartId id) const { return const_cast<Plant*>(this)->find(id); }

std::vector<const PlantPart*> Plant::withRole(parts::Role role) const
{
    std::vector<const PlantPart*> found;
    for (const PlantPart& part : parts) {
        if (part.model.role == role) {
            found.push_back(&part);
        }
    }
    return found;
}

network::Network Plant::makeNetwork() const
{
    network::Network network;
    for (int j = 0; j < junctions; ++j) {
        network.addJunction();
    }
    for (const Chain& chain : chains) {
        network.addLink({chain.from, chain.to, chain.elements});
    }
    network.prepare();
    return network;
}

double Plant::tubeLength_m() const
{
    double all = 0;
    for (const Chain& chain : chains) {
        for (const thermal::Stretch& stretch : chain.stretches) {
            all += stretch.length_m;
        }
    }
    return all;
}

thermal::Field Plant::makeField(const thermal::Grid& grid) const
{
    thermal::Field field;
    for (int j = 0; j < junctions; ++j) {
        field.addJunction();
    }
    for (const Chain& chain : chains) {
        std::vector<thermal::Stretch> stretches = chain.stretches;
        if (stretches.empty()) {
            thermal::Stretch drop;
            drop.volume_m3 = 1e-6;
            stretches.push_back(drop);
        }
        field.addRun(chain.from, chain.to, std::move(stretches));
    }
    thermal::Grid bounded = grid;
    bounded.cell_m = std::max(grid.cell_m, tubeLength_m() / kMostCells);
    field.prepare(bounded);
    return field;
}

Result<Plant> makePlant(const document::Drawing& drawing, document::View view)
{
    return Builder(drawing, view).build();
}

}  // namespace tapward::study
