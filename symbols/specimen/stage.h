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
    std::optional<drawing::Point> symbolAt = {};
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
};

/// One film of an invented plan at 1:25,000, with an invented column, whose window is a piece of a specimen's page:
/// what is put on it is engraved like any film, by the same function and with the same care for letters.
class Stage {
  public:
    /// @param room  of the page; exhibits are placed from its upper left corner
    Stage(const drawing::Box& room, const drawing::Gauge& gauge, PenMode pens);
    Stage& add(const Exhibit& exhibit);
    Stage& add(const ExhibitRoute& exhibit);
    /// In millimetres of the page.
    [[nodiscard]] drawing::Drawing engraved() const;
    /// The exhibit added last as a small picture in a room.
    [[nodiscard]] drawing::Drawing token(const measures::Entry& entry, const drawing::Box& room) const;

  private:
    drawing::Box room_;
    plan::Plan plan_;
    plan::Film film_;
    std::vector<plan::ItemId> exhibits_;
    drawing::Gauge gauge_;
    PenMode pens_;

    [[nodiscard]] Engraving engraving(const film::Frame& frame) const;
    plan::ItemId show(const Exhibit& exhibit);
};

}  // namespace crosstick::symbols
