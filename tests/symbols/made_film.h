#pragma once

#include <string>
#include <vector>

#include "symbols/specimen/stage.h"

namespace crosstick::symbols::testing {

/// Places are film millimetres; others are named by the order of adding.
using Made = Exhibit;

/// A route with checkpoints numbered from 1 on its stops.
struct MadeRoute {
    drawing::Points vertices;
    std::vector<std::size_t> stops = {};  ///< vertices with a checkpoint
    std::string name = {};
    plan::Use use = plan::Use::Primary;
    std::map<std::size_t, drawing::Point> figuresAt = {};  ///< of the leg behind the nth stop
};

/// A stage of 200 by 150 mm at 1:25,000, its upper left corner at 0, 0.
class MadeFilm {
  public:
    static constexpr drawing::Box kWindow{0, 0, 200, 150};

    MadeFilm();
    MadeFilm& add(const Made& made);
    MadeFilm& add(const MadeRoute& made);
    MadeFilm& add(const plan::Column& column, const std::vector<plan::Element>& elements);
    MadeFilm& gauge(const drawing::Gauge& gauge);
    MadeFilm& onePen();
    /// Before anything is added: another scale and window.
    MadeFilm& scale(Scale scale, const drawing::Box& window = kWindow);
    MadeFilm& reserve(const drawing::Box& box);

    [[nodiscard]] plan::ItemId item() const { return stage_.shown().back().item; }  ///< added last
    /// Of an item in the order of adding.
    [[nodiscard]] std::size_t place(const plan::ItemId& item) const;
    [[nodiscard]] EngravedFilm engraved() const { return stage_.film(); }
    /// Of the item added last, or by its place in the order of adding (routes after their checkpoints).
    [[nodiscard]] drawing::Drawing drawn() const { return drawn(stage_.shown().size() - 1); }
    [[nodiscard]] drawing::Drawing drawn(std::size_t item) const;
    [[nodiscard]] std::vector<LegendRow> legendRows(LegendExtent extent = LegendExtent::NotStandard) const {
        return stage_.legendRows(extent);
    }
    /// Names of the remarks: "symbols/no-length".
    [[nodiscard]] std::vector<std::string> remarks() const;
    [[nodiscard]] const drawing::Gauge& gauge() const { return stage_.gauge(); }

  private:
    Stage stage_;
    plan::Force force_;
    PenMode pens_ = PenMode::Colour;
};

/// A measure of a kind at a place, with a name and as many points as it needs, about 50 mm across.
[[nodiscard]] Made sample(std::string_view kind, drawing::Point at);

}  // namespace crosstick::symbols::testing
