#pragma once

#include <string>
#include <vector>

#include "core/measures/catalogue.h"
#include "symbols/engrave.h"

namespace crosstick::symbols {

/// A measure of an invented plan; places are millimetres from the stage's upper left corner.
struct Exhibit {
    std::string kind;
    std::vector<drawing::Point> points = {};
    std::string name = {}, number = {};
    plan::Standing standing = plan::Standing::Present;
    plan::Whose whose = plan::Whose::Own;
    std::map<std::string, std::string> fields = {};
    std::optional<drawing::Point> symbolAt = {}, labelAt = {};
    std::optional<std::size_t> standsWith = {}, pointsTo = {};  ///< exhibits by their order on the stage
};

/// A route of it. Its stops are exhibits by their order on the stage, on the vertex named beside.
struct ExhibitRoute {
    struct Stop {
        std::size_t vertex;
        std::size_t exhibit;
    };
    std::vector<drawing::Point> vertices;
    std::vector<Stop> stops = {};
    std::string name = {};
    plan::Use use = plan::Use::Primary;
    std::optional<drawing::Point> labelAt = {};
    std::map<std::size_t, drawing::Point> figuresAt = {};  ///< of the first piece of the leg behind the nth stop
};

/// One film of an invented plan whose window is a piece of a specimen's page: what is put on it is engraved like any
/// film, by the same function and with the same care for letters.
class Stage {
  public:
    static constexpr Scale kScale{25000};
    /// @param room  of the page; exhibits are placed from its upper left corner
    Stage(const drawing::Box& room, const drawing::Gauge& gauge, PenMode pens, Scale scale = kScale);
    Stage& add(const Exhibit& exhibit);
    Stage& add(const ExhibitRoute& exhibit);
    Stage& add(const plan::Force& force);  ///< who marches in the blocks of orders of march
    Stage& reserve(const drawing::Box& box);
    Stage& drawnWith(const drawing::Gauge& gauge, PenMode pens);

    [[nodiscard]] const drawing::Gauge& gauge() const { return gauge_; }
    [[nodiscard]] const std::vector<plan::Showing>& shown() const { return film_.shows; }  ///< in the order of adding
    /// In millimetres from the room's upper left corner.
    [[nodiscard]] EngravedFilm film() const;
    [[nodiscard]] std::vector<LegendRow> legendRows(LegendExtent extent) const;
    /// In millimetres of the page.
    [[nodiscard]] drawing::Drawing engraved() const;
    /// The exhibit added last as a small picture in a room.
    [[nodiscard]] drawing::Drawing token(const measures::Entry& entry, const drawing::Box& room) const;

  private:
    drawing::Box room_;
    plan::Plan plan_;
    plan::Film film_;
    drawing::Gauge gauge_;
    PenMode pens_;
    Scale scale_;
    std::vector<drawing::Box> reserved_;

    [[nodiscard]] film::Frame frame() const;
    [[nodiscard]] Engraving engraving(const film::Frame& frame) const;
    plan::ItemId show(const Exhibit& exhibit);
};

}  // namespace crosstick::symbols
