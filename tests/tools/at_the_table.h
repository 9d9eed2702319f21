#pragma once

#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "ui/tools/tool.h"

namespace crosstick::tools {

/// One film and a hand: events go to a tool as the table sends them; commits become the plan, selections the selection.
class AtTheTable : public ::testing::Test {
  protected:
    using Kind = Event::Kind;
    IdSource ids{14};
    plan::FilmId film = ids.next();
    plan::Plan plan = plan::withFilm(plan::Plan{}, film, "MOVE", {});
    std::optional<plan::Plan> draft;
    std::vector<plan::ItemId> selection;
    std::vector<std::string> captions;
    std::optional<Error> refused;
    std::string said;
    bool done = false;

    static geodesy::PlanePoint at(double east, double north) {
        return {Metres(650000 + east), Metres(5100000 + north)};
    }
    plan::ItemId put(const char* kind, plan::Points points, const char* number = "") {
        plan::Measure measure;
        measure.id = ids.next();
        measure.kind = kind;
        measure.number = number;
        measure.points = std::move(points);
        const plan::ItemId id = measure.id;
        plan = plan::withMeasure(plan, std::move(measure), film);
        return id;
    }
    [[nodiscard]] Ground ground() {
        Ground now{plan, film, plan.films(), {}, Metres(10), [this] { return ids.next(); }};
        now.selection = selection;
        now.selected = selection.empty() ? std::nullopt : std::optional(selection.front());
        return now;
    }
    void tell(Tool& tool, Event event) {
        const Reply reply = tool.take(event, ground());
        if (reply.draft) {
            draft = reply.draft;
        }
        if (reply.draftGone || reply.commit) {
            draft.reset();
        }
        if (reply.commit) {
            plan = reply.commit->plan;
            captions.push_back(reply.commit->caption);
        }
        if (reply.select) {
            selection = *reply.select ? std::vector{**reply.select} : std::vector<plan::ItemId>{};
        }
        if (reply.selectAll) {
            selection = *reply.selectAll;
        }
        refused = reply.refused ? reply.refused : refused;  // a release after a press says nothing of its own
        said = reply.said.empty() ? said : reply.said;
        done = done || reply.done;
    }
    enum class Key { None, Shift, Control };
    void drag(Tool& tool, geodesy::PlanePoint from, geodesy::PlanePoint to, Key key = Key::None) {
        const bool second = key == Key::Shift;
        const bool more = key == Key::Control;
        tell(tool, {Kind::Move, from, false, second, more});
        tell(tool, {Kind::Press, from, true, second, more});
        if (!(from == to)) {
            tell(tool, {Kind::Move, to, true, second, more});
        }
        tell(tool, {Kind::Release, to, false, second, more});
    }
    void click(Tool& tool, double east, double north, Key key = Key::None) {
        drag(tool, at(east, north), at(east, north), key);
    }
};

}  // namespace crosstick::tools
