#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/drawing/drawing.h"
#include "core/drawing/occupancy.h"
#include "core/film/frame.h"
#include "core/movement/route_figures.h"
#include "core/plan/plan.h"

namespace crosstick::symbols {

enum class PenMode { Colour, OnePen };
enum class Surface { LightTable, Film };  ///< halo on the light table and colour prints, none on film

/// What a film is drawn from, and under which rules.
struct Engraving {
    const plan::Plan& plan;
    const plan::Film& film;
    const film::Frame& frame;
    drawing::Gauge gauge;
    PenMode pens = PenMode::Colour;
    Surface surface = Surface::Film;
    /// Boxes that nothing may touch: ticks with their labels, the administrative block (film millimetres).
    std::vector<drawing::Box> reserved;
    /// Figures for the leg labels, by route; a route without any is drawn without labels.
    std::map<plan::ItemId, movement::RouteFigures> figures;
    geodesy::AngleUnit angles = geodesy::AngleUnit::Degrees;
};

/// Something a draughtsman would tell the leader: a measure of no length, a label left out.
struct Remark {
    plan::ItemId item;
    FaultId about;  ///< identity, worded at the edge: "symbols/no-length"
};

/// A symbol or a label of an item: what a hand takes hold of. Figures of a route are a hand's leg by leg.
struct Part {
    enum class What { Symbol, Letters, Figures };
    drawing::TurnedBox box;
    What what = What::Symbol;
    /// What figures belong to; nothing for those that no hand places: of what lies before the legs, and of a leg that
    /// was walked before.
    std::optional<plan::LegPiece> leg = {};
};

/// One shown item with its ink, so that it can be hit, highlighted and repainted by itself.
struct EngravedItem {
    plan::ItemId item;
    drawing::Drawing drawing;
    std::vector<Part> parts = {};  ///< its symbol and labels
    /// Where its symbol stands, as Showing::symbolAt would say it; nothing for what has none.
    std::optional<drawing::Point> handle = {};
    bool isAside = false;  ///< the symbol stands off its spot, by an extension line
};

struct EngravedFilm {
    std::vector<EngravedItem> items;  ///< in painting order
    std::vector<Remark> remarks;
    [[nodiscard]] drawing::Drawing all() const&;
    [[nodiscard]] drawing::Drawing all() &&;
};

/// Every measure and route that a film shows, in film millimetres, by the engraving rules: lines broken for their
/// labels, labels clear of each other by the ladder, everything inside the window. A pure function: same arguments,
/// same marks.
[[nodiscard]] EngravedFilm engrave(const Engraving& engraving);

/// A row of the legend that this film must carry: what is not standard on it, and both patterns of routes.
struct LegendRow {
    drawing::Drawing sample;  ///< 16 x 5 mm, upper left corner at 0, 0, drawn by the measure's own function
    std::string text;
};
/// What a legend explains: what is not standard on the film, or each kind that it shows.
enum class LegendExtent { NotStandard, Everything };
[[nodiscard]] std::vector<LegendRow> legend(const Engraving& engraving,
                                            LegendExtent extent = LegendExtent::NotStandard);

/// An action box by itself, its tip at `tip`, rows inside: for the ladder of a route card and the like.
[[nodiscard]] drawing::Drawing actionBox(drawing::Point tip, const std::vector<std::string>& rows,
                                         const drawing::Gauge& gauge, drawing::Ink ink);

}  // namespace crosstick::symbols
