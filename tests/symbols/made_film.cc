#include "tests/symbols/made_film.h"

#include <algorithm>

#include "core/measures/catalogue.h"

namespace crosstick::symbols::testing {

MadeFilm::MadeFilm() : stage_(kWindow, drawing::Gauge(), PenMode::Colour) {}

MadeFilm& MadeFilm::add(const Made& made) {
    stage_.add(made);
    return *this;
}

MadeFilm& MadeFilm::add(const MadeRoute& made) {
    ExhibitRoute route{.vertices = made.vertices, .name = made.name, .use = made.use, .figuresAt = made.figuresAt};
    for (std::size_t n = 0; n < made.stops.size(); ++n) {
        route.stops.push_back({made.stops[n], stage_.shown().size()});
        add(Made{.kind = "checkpoint", .points = {made.vertices[made.stops[n]]}, .number = std::to_string(n + 1)});
    }
    stage_.add(route);
    return *this;
}

MadeFilm& MadeFilm::add(const plan::Column& column, const std::vector<plan::Element>& elements) {
    force_.columns.push_back(column);
    force_.elements.insert(force_.elements.end(), elements.begin(), elements.end());
    stage_.add(force_);
    return *this;
}

MadeFilm& MadeFilm::gauge(const drawing::Gauge& gauge) {
    stage_.drawnWith(gauge, pens_);
    return *this;
}
MadeFilm& MadeFilm::onePen() {
    pens_ = PenMode::OnePen;
    stage_.drawnWith(stage_.gauge(), pens_);
    return *this;
}

MadeFilm& MadeFilm::scale(Scale scale, const drawing::Box& window) {
    stage_ = Stage(window, stage_.gauge(), pens_, scale);
    return *this;
}

MadeFilm& MadeFilm::reserve(const drawing::Box& box) {
    stage_.reserve(box);
    return *this;
}

std::size_t MadeFilm::place(const plan::ItemId& item) const {
    const auto& shown = stage_.shown();
    const auto found =
        std::find_if(shown.begin(), shown.end(), [&](const plan::Showing& one) { return one.item == item; });
    return static_cast<std::size_t>(found - shown.begin());
}

drawing::Drawing MadeFilm::drawn(std::size_t item) const {
    for (EngravedItem& one : engraved().items) {
        if (one.item == stage_.shown()[item].item) {
            return std::move(one.drawing);
        }
    }
    return {};
}

std::vector<std::string> MadeFilm::remarks() const {
    std::vector<std::string> names;
    for (const Remark& remark : engraved().remarks) {
        names.emplace_back(remark.about.name);
    }
    return names;
}

Made sample(std::string_view kind, drawing::Point at) {
    using drawing::Vector;
    using measures::Sign;
    Made made{.kind = std::string(kind), .points = {at}, .name = "FLINT"};
    const measures::Entry* entry = measures::find(kind);
    if (entry == nullptr) {
        return made;
    }
    if (entry->points.most && *entry->points.most > 1) {
        made.points = {at + Vector{-15, 8}, at + Vector{12, 10}, at + Vector{-22, -14}, at + Vector{20, -12}};
        if (*entry->points.most == 2) {  // a sign's middle and its corner
            made.points = {at + Vector{-8, 8}, at + Vector{10, -5}};
        }
        made.points.resize(static_cast<std::size_t>(*entry->points.most));
    } else if (entry->shape == measures::Shape::Line) {
        made.points = {at + Vector{-25, 6}, at + Vector{0, 0}, at + Vector{28, -4}};
    } else if (entry->shape == measures::Shape::Area) {
        made.points = {at + Vector{-18, -9}, at + Vector{4, -14}, at + Vector{20, -2}, at + Vector{6, 13},
                       at + Vector{-14, 10}};
    } else if (entry->shape == measures::Shape::Point) {
        made.name = entry->sign == Sign::TaskWords ? "OBJ PINE" : "";
        made.number = entry->sign == Sign::Unit || entry->sign == Sign::TaskWords ? "" : "3";
    }
    if (entry->sign == Sign::Boundary) {
        made.fields = {{"left_unit", "2/C"}, {"right_unit", "3/C"}, {"left_echelon", "plt"}, {"right_echelon", "plt"}};
    } else if (entry->sign == Sign::Unit) {
        made.fields = {{"unit", "1/2 inf sqd (+)"}};
    }
    return made;
}

}  // namespace crosstick::symbols::testing
