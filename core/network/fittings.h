// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace tapward::network {

/// How tube ends are joined: it decides the bore of every fitting and so most of a small loop's loss.
enum class FittingFamily { BrassInsert, PolymerInsert, Expansion, Soldered };

enum class FittingShape { Coupling, Elbow, TeeRun, TeeBranch };

/// Loss coefficient K on the *tube's* velocity head for one fitting on tube of this bore (m).
/// The insert families follow a published equivalent-length table; between its sizes K is interpolated
/// on the logarithm of the bore, outside them it holds; the physical spread to allow for is +/-30 %.
/// Expansion fittings take the figures of screwed ones of near full bore (common practice, no published
/// source). Source: PEX maker installation manual, form IM-PF 724596 0416, section 10.2 (equivalent feet), turned
/// into K with the Churchill friction factor at 8 ft/s and 60 °F; Crane TP-410 n fT factors for soldered.
double fittingK(FittingFamily family, FittingShape shape, double bore_m);

/// K on the velocity head in `bore_m` of a valve with this flow coefficient, and the square-law
/// resistance R (Pa/(m³/s)², loss = R q|q|) of water at 998.2 kg/m³.
double resistanceFromCoefficient(double flowAtOnePascal);  ///< coefficient in m³/s at 1 Pa
double coefficientFromCv(double cv);                       ///< gpm at 1 psi -> m³/s at 1 Pa
double coefficientFromKv(double kv);                       ///< m³/h at 1 bar -> m³/s at 1 Pa
double kFromCoefficient(double flowAtOnePascal, double bore_m);

}  // namespace tapward::network
