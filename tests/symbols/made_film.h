#pragma once

#include <string>
#include <vector>

#include "core/drawing/path.h"
#include "symbols/engrave.h"

namespace crosstick::symbols::testing {

/// What a measure of a made film is; places are film millimetres.
struct Made {
    std::string kind;
    drawing::Points points = {};
    std::string name = {}, number = {};
    plan::Standing standing = plan::Standing::Present;
    plan::Whose whose = plan::Whose::Own;
    std::map<std::string, std::string> fields = {};
    std::optional<drawing::Point> symbolAt = {}, labelAt = {};
    std::optional<std::size_t> standsWith = {}, pointsTo = {};  ///< by the order of adding
};

struct MadeRoute {
    drawing::Points vertices;
    std::vector<std::size_t> stops = {};  ///< vertices with a checkpoint
    std::string name = {};
    plan::Use use = plan::Use::Primary;
};

/// A film of 200 by 150 mm at 1:25,000, upper left corner at 0, 0, whose ground is given in its own millimetres.
class MadeFilm {
  public:
    static constexpr drawing::Box kWindow{0, 0, 200, 150};

    MadeFilm();
    MadeFilm& add(const Made& made);
    /// A route with checkpoints numbered from 1 on its stops.
    MadeFilm& add(const MadeRoute& made);
    MadeFilm& add(const plan::Column& column, const std::vector<plan::Element>& elements);
    MadeFilm& gauge(const drawing::Gauge& gauge);
    MadeFilm& onePen();
    /// Before anything is added: another scale, and the window in its millimetres.
    MadeFilm& scale(Scale scale);
    MadeFilm& window(const drawing::Box& window);
    MadeFilm& reserve(const drawing::Box& box);

    [[nodiscard]] plan::ItemId item() const { return film_.shows.back().item; }  ///< added last
    [[nodiscard]] EngravedFilm engraved() const;
    /// Of the item added last, or by its place in the order of adding (routes after their checkpoints).
    [[nodiscard]] drawing::Drawing drawn() const;
    [[nodiscard]] drawing::Drawing drawn(std::size_t item) const;
    [[nodiscard]] std::vector<LegendRow> legendRows(LegendExtent extent = LegendExtent::NotStandard) const;
    /// Names of the remarks: "symbols/no-length".
    [[nodiscard]] std::vector<std::string> remarks() const;
    [[nodiscard]] const drawing::Gauge& gauge() const { return gauge_; }

  private:
    plan::Plan plan_;
    plan::Film film_;
    drawing::Gauge gauge_;
    PenMode pens_ = PenMode::Colour;
    std::vector<drawing::Box> reserved_;
    Scale scale_{25000};

    [[nodiscard]] geodesy::PlanePoint ground(drawing::Point p) const;
    [[nodiscard]] std::vector<geodesy::PlanePoint> ground(const drawing::Points& points) const;
    [[nodiscard]] std::optional<geodesy::PlanePoint> ground(const std::optional<drawing::Point>& p) const;
    [[nodiscard]] Engraving engraving(const film::Frame& frame) const;
    void show(const plan::ItemId& item, const Made& made);
};

/// A measure of a kind at a place, with a name and as many points as it needs, about 50 mm across.
[[nodiscard]] Made sample(std::string_view kind, drawing::Point at);

}  // namespace crosstick::symbols::testing
