#pragma once

/// Every tolerance of the program, each with the reason for its size. Lengths in cm.
namespace drapewright::tolerance {

/// How far a drawn inset or border may lie from the true offset curve, on its safe side. A
/// twentieth of a millimetre: a tenth of what a scalpel or a pen line is wide.
inline constexpr double offset_cm = 0.005;

/// Outlines are thinned by this before they are offset. A hundredth of a millimetre: real traces
/// carry runs of nearly collinear points that make general-purpose offsetting fail in silence.
inline constexpr double thinning_cm = 1e-3;

/// Every corner of an outline is moved by up to this before it is offset, which breaks the exact
/// ties (parallel edges, equal distances) that offsetting fails on. A hundredth of the thinning.
inline constexpr double jitter_cm = 1e-5;

/// Spacing of the integer grid on which overlays are computed. A ten-thousandth of a millimetre;
/// 200 cm fit a 32-bit integer a hundred times over.
inline constexpr double grid_cm = 1e-5;

/// Points nearer to each other than this are one point.
inline constexpr double same_point_cm = 1e-6;

/// A point this near to the line between its neighbours lies on it. Rounding errors only, so that
/// dropping such points one after another cannot add up to a shift.
inline constexpr double collinear_cm = 1e-9;

/// Centre and radius of the largest circle are found to this. A hundredth of a millimetre.
inline constexpr double circle_cm = 1e-3;

/// The wound's area that is farther than the inset plus this from the top filler is reported as
/// unfilled (plan file, `unfilled_cm2`).
inline constexpr double unfilled_band_cm = 0.05;

/// A film sheet counts as large enough when it is short by no more than this: below it lie only
/// rounding errors of the fit test itself.
inline constexpr double sheet_fit_cm = 1e-9;

/// A sheet counts as large enough for a drawn film when it is short by no more than this: the drawn
/// edge is wider than the true one by up to the drawing error on each side.
inline constexpr double sheet_slack_cm = 2 * offset_cm;

/// Film and zones closer than this count as touching: the border there is none.
inline constexpr double contact_cm = 1e-4;

}  // namespace drapewright::tolerance
