#pragma once

#include <array>
#include <string>
#include <vector>

#include "core/drawing/drawing.h"
#include "core/movement/evacuation.h"
#include "core/movement/paper_figures.h"
#include "core/movement/route_light.h"

namespace crosstick::press {

/// One fact of a card's head: "Sheet", "Ulmeray 4271, ZT25"; its rows are broken at commas first.
struct CardFact {
    std::string label;
    std::string value;
    drawing::Weight weight = drawing::Weight::Regular;
};

/// The light of one date, a row of the head's small table.
struct CardLight {
    std::string date;  ///< "13 MAR"
    std::array<movement::LightFigure, 9> figures;
};

/// Which of a route's cards a note stands on.
enum class OnCard { Last, First, Every };

/// A line under the table: "If not found:" bold, then its text.
struct CardNote {
    std::string lead;
    std::string text;
    OnCard on = OnCard::Last;
};

/// Everything a card says beside the figures of its legs.
struct CardWords {
    std::string title;    ///< "RTE QUILL"
    std::string purpose;  ///< "primary, on film MOVE, phases 1–2"
    std::string marking;
    int notches = 0;                    ///< the place in the stack of the film that shows the route; 0: no film does
    std::vector<CardFact> left, right;  ///< the last on the left may stand on the right, where there is more room
    std::vector<CardLight> light;       ///< under both, across the card
    std::vector<CardNote> notes;
    std::string exact;                ///< exact ground distance and relief, under the totals
    std::string source, briefSource;  ///< the second where there is little room
};

/// In which unit angles are written, and by which model ("WMM2025").
struct CardAngles {
    geodesy::AngleUnit unit;
    std::string modelName;
};

/// What is not empty, with a text between each two.
[[nodiscard]] std::string joined(const std::vector<std::string>& parts, std::string_view between);
/// The plan's first sheet: "ULMERAY SOUTH 2, ISL 25, ed. 3, 1:25 000", or "none".
[[nodiscard]] std::string sheetText(const plan::Plan& plan);

[[nodiscard]] CardWords cardWords(const plan::Plan& plan, const movement::RouteFigures& figures,
                                  const movement::PaperRoute& paper,
                                  const std::optional<movement::EvacuationFigures>& evacuation,
                                  const CardAngles& angles);
/// "13 MAR": the light of the dates on which a route is walked, for a paper's head.
[[nodiscard]] std::vector<CardLight> cardLight(const plan::Plan& plan, const movement::RouteFigures& figures);

}  // namespace crosstick::press
