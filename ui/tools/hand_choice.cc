// The hand chooses: one thing, several, what lies underneath; and what its keys do to that.
#include <algorithm>

#include <fmt/format.h>

#include "core/plan/set_edits.h"
#include "ui/tools/hand_tool.h"

namespace crosstick::tools {
namespace {

plan::Anchor lies(const plan::Plan& plan, const plan::ItemId& item) {
    const plan::MeasurePtr measure = plan.measure(item);
    return measure ? measure->anchor : plan::Anchor::Ground;
}

bool contains(const std::vector<plan::ItemId>& items, const plan::ItemId& item) {
    return std::find(items.begin(), items.end(), item) != items.end();
}

}  // namespace

/// With a key a box is begun there; else nothing is chosen any more.
Reply HandTool::onBareSheet(const Event& event, const Ground& ground) {
    Reply reply;
    if (event.held && (event.second || event.more)) {
        box_ = Drawn{{event.at, event.at, ground.up}, event.more};
    } else {
        reply.select = std::optional<plan::ItemId>();
    }
    return reply;
}

/// Pressed with the key that adds, the thing joins the others or leaves them; else all of them are taken hold of.
Reply HandTool::chosen(const plan::ItemId& item, const Event& event, const Ground& ground) {
    Reply reply;
    std::vector<plan::ItemId> items = ground.selection;
    if (!event.more) {
        if (event.held) {
            grip_ = Grip{item, What::Several, 0, event.at, event.at, ground.plan, false, ground.film, {}, items};
        }
        return reply;
    }
    if (contains(items, item)) {
        std::erase(items, item);
    } else {
        items.push_back(item);
    }
    reply.selectAll = std::move(items);
    return reply;
}

Reply HandTool::boxed(const Ground& ground) {
    const Drawn drawn = *box_;
    box_.reset();
    std::vector<plan::ItemId> items = drawn.adds ? ground.selection : std::vector<plan::ItemId>{};
    for (const plan::ItemId& item : allIn(ground.plan, ground.shown, drawn.box)) {
        if (!contains(items, item)) {
            items.push_back(item);
        }
    }
    Reply reply;
    reply.selectAll = std::move(items);
    return reply;
}

plan::Plan HandTool::severalMoved(const Grip& grip, const Event& event, const Ground& ground) {
    plan::Plan next = plan::allMovedBy(grip.base, grip.several, event.at.easting - grip.start.easting,
                                       event.at.northing - grip.start.northing);
    const auto from = ground.onPaper ? ground.onPaper(grip.start) : std::nullopt;
    const auto to = ground.onPaper ? ground.onPaper(event.at) : std::nullopt;
    for (const plan::ItemId& item : grip.several) {
        if (from && to && lies(grip.base, item) == plan::Anchor::Paper) {
            next = plan::movedBy(next, item, Metres(to->x - from->x), Metres(to->y - from->y));
        }
    }
    return next;
}

std::optional<plan::ItemId> HandTool::next(const Ground& ground, int step) const {
    const auto& items = pile_.items;
    if (items.empty()) {
        return ground.selected;
    }
    const auto count = static_cast<std::ptrdiff_t>(items.size());
    const auto at = ground.selected ? std::find(items.begin(), items.end(), *ground.selected) : items.end();
    const std::ptrdiff_t now = at == items.end() ? (step > 0 ? -1 : 0) : at - items.begin();
    return items[static_cast<std::size_t>(((now + step) % count + count) % count)];
}

std::optional<plan::ItemId> HandTool::underneath(const Ground& ground, int step) const {
    const bool isThere = pile_.items.size() > 1 && apart(hand_, pile_.at) <= ground.reach && ground.selected &&
                         contains(pile_.items, *ground.selected);
    return isThere ? next(ground, step) : std::nullopt;
}

void HandTool::tell(const Ground& ground) {
    std::erase_if(pile_.items, [&](const plan::ItemId& item) { return nameOf(ground.plan, item).empty(); });
    const auto& items = pile_.items;
    const auto at = ground.selected ? std::find(items.begin(), items.end(), *ground.selected) : items.end();
    told_.clear();
    if (ground.selection.size() > 1) {
        told_ = fmt::format("{} chosen", ground.selection.size());
    } else if (items.size() > 1 && at != items.end() && apart(hand_, pile_.at) <= ground.reach) {
        told_ = fmt::format("{}, {} of {} here", nameOf(ground.plan, *at), at - items.begin() + 1, items.size());
    }
}

Wet HandTool::wet() const {
    Wet wet;
    if (box_) {
        wet.line = box_->box.corners();
        wet.line.push_back(wet.line.front());
    }
    return wet;
}

std::optional<Tool::Snaps> HandTool::snaps() const {
    if (!grip_ || grip_->what != What::Point) {
        return std::nullopt;
    }
    // A point that was put in just now has no number in the plan yet.
    const std::size_t vertex = grip_->added ? static_cast<std::size_t>(-1) : grip_->vertex;
    return Snaps{drafting::InHand{grip_->item, vertex}};
}

std::optional<std::size_t> HandTool::heldPoint(const plan::ItemId& selected) const {
    return held_ && held_->item == selected ? std::optional(held_->vertex) : std::nullopt;
}

/// The whole of it: by metres of the ground, or by half a millimetre of the film's paper.
Reply HandTool::nudged(const plan::ItemId& item, const Event& event, const Ground& ground) {
    Reply reply;
    if (lies(ground.plan, item) == plan::Anchor::Paper) {
        const auto half = [](Metres by) { return Metres(by.value() > 0 ? 0.5 : by.value() < 0 ? -0.5 : 0.0); };
        reply.commit = Commit{plan::movedBy(ground.plan, item, half(event.at.easting), half(-event.at.northing)),
                              "nudge a block", false};
    } else {
        reply.commit = Commit{plan::movedBy(ground.plan, item, event.at.easting, event.at.northing), "nudge", false};
    }
    return reply;
}

/// What the keys do to the selected thing.
Reply HandTool::keyed(const Event& event, const Ground& ground) {
    Reply reply;
    const plan::ItemId item = *ground.selected;
    const std::size_t count = pointsOf(ground.plan, item);
    if (held_ && (held_->item != item || held_->vertex >= count)) {
        held_.reset();  // another thing was selected meanwhile, or an undo took the point away
    }
    switch (event.kind) {
        case Event::Kind::NextPoint:
            held_ = count > 1 ? std::optional(Held{item, held_ ? (held_->vertex + 1) % count : 0}) : std::nullopt;
            break;
        case Event::Kind::LastPoint:
            held_ =
                count > 1 ? std::optional(Held{item, ((held_ ? held_->vertex : 0) + count - 1) % count}) : std::nullopt;
            break;
        case Event::Kind::Nudge:  // the event's place is the displacement
            if (ground.selection.size() > 1) {
                const Grip all{item, What::Several, 0, {}, {}, ground.plan, false, {}, {}, ground.selection};
                reply.commit = Commit{severalMoved(all, event, ground), "nudge several", false};
            } else if (held_) {
                const geodesy::PlanePoint from = pointOf(ground.plan, item, held_->vertex);
                const geodesy::PlanePoint to{from.easting + event.at.easting, from.northing + event.at.northing};
                reply.commit = Commit{plan::withPoint(ground.plan, item, held_->vertex, to), "nudge a point", false};
            } else {
                return nudged(item, event, ground);
            }
            break;
        case Event::Kind::TakeBack:
            if (held_) {
                reply.commit = Commit{plan::withoutPoint(ground.plan, item, held_->vertex), "take out a point", false};
            }
            break;
        default:
            break;
    }
    return reply;
}

}  // namespace crosstick::tools
