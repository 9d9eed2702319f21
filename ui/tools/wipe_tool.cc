#include "ui/tools/wipe_tool.h"

#include <algorithm>

#include "ui/tools/hit.h"

namespace crosstick::tools {
namespace {

/// The way along a line that is nearest to a place; within reach of an end the end.
double wayAt(const plan::Points& line, geodesy::PlanePoint at, Metres reach) {
    const double last = static_cast<double>(line.size()) - 1;
    if (apart(line.front(), at) <= reach) {
        return 0;
    }
    if (apart(line.back(), at) <= reach) {
        return last;
    }
    return geodesy::nearestOn(line, geodesy::Ends::Open, at)->way;
}

}  // namespace

Reply WipePartTool::begun(const Event& event, const Ground& ground) {
    Reply reply;
    const plan::FilmPtr film = ground.plan.film(ground.film);
    const auto hit = film ? hitAt(ground.plan, {film}, {}, event.at, ground.reach) : std::nullopt;
    if (!hit) {
        reply.said = "Press on a line of the working film: only that is wiped.";
        return reply;
    }
    if (!drafting::hasPartsToWipe(ground.plan, hit->item)) {
        reply.said =
            nameOf(ground.plan, hit->item) + " has no part that could go. Wipe it off whole, or a region across.";
        return reply;
    }
    const plan::RoutePtr route = ground.plan.route(hit->item);
    part_ = Part{hit->item, route ? route->vertices : ground.plan.measure(hit->item)->points, 0, 0};
    part_->from = part_->to = wayAt(part_->line, event.at, ground.reach);
    what_ = nameOf(ground.plan, hit->item);
    return reply;
}

Reply WipePartTool::ended(const Ground& ground) {
    Reply reply;
    if (part_->from == part_->to) {
        return reply;
    }
    const geodesy::Stretch stretch{std::min(part_->from, part_->to), std::max(part_->from, part_->to)};
    reply.commit =
        Commit{drafting::stretchWiped(ground.plan, part_->item, stretch, ground.newId), "wipe a part of a line", false};
    part_.reset();
    return reply;
}

Reply WipePartTool::take(const Event& event, const Ground& ground) {
    Reply reply;
    if (part_ && !ground.plan.measure(part_->item) && !ground.plan.route(part_->item)) {
        part_.reset();  // an undo took it away meanwhile
    }
    if (event.kind <= Event::Kind::Release) {
        hand_ = event.at;
        if (part_) {
            part_->to = wayAt(part_->line, event.at, ground.reach);
        }
    }
    switch (event.kind) {
        case Event::Kind::Press:
            pressed_ = event.at;
            return part_ ? ended(ground) : begun(event, ground);
        case Event::Kind::Release:
            return part_ && apart(pressed_, event.at) > ground.reach * 2 ? ended(ground) : reply;
        case Event::Kind::Finish:
            return part_ ? ended(ground) : reply;
        case Event::Kind::TakeBack:
            part_.reset();
            break;
        case Event::Kind::Cancel:
            reply.done = !part_;
            part_.reset();
            break;
        default:
            break;
    }
    return reply;
}

Wet WipePartTool::wet() const {
    Wet wet{{hand_}, false, part_ ? "a part of " + what_ : "wipe a part of a line", std::nullopt};
    if (part_ && part_->from != part_->to) {
        wet.others.push_back(
            geodesy::lineOf(part_->line, {std::min(part_->from, part_->to), std::max(part_->from, part_->to)}));
    }
    return wet;
}

std::string WipePartTool::hint() const {
    return part_ ? "click where the part ends" : "click on the line where the part begins";
}

void WipeRegionTool::pressed(const Event& event) {
    if (asked_) {
        corners_.clear();  // another region in its place
        asked_ = false;
    }
    corners_.push_back(event.at);
}

void WipeRegionTool::finish(const Ground& ground) {
    if (corners_.size() > 2 && !asked_) {
        asked_ = true;
        ask_(drafting::regionWiped(ground.plan, ground.film, corners_, ground.newId));
    }
}

Reply WipeRegionTool::take(const Event& event, const Ground& ground) {
    Reply reply;
    up_ = ground.up;
    if (event.kind <= Event::Kind::Release) {
        hand_ = event.at;
    }
    switch (event.kind) {
        case Event::Kind::Press:
            pressed(event);
            break;
        case Event::Kind::Release:
            if (corners_.size() == 1 && apart(corners_.front(), event.at) > ground.reach * 2) {
                corners_ = Box{corners_.front(), event.at, up_}.corners();
                finish(ground);
            }
            break;
        case Event::Kind::Again:
        case Event::Kind::Finish:
            finish(ground);
            break;
        case Event::Kind::TakeBack:
            if (!corners_.empty() && !asked_) {
                corners_.pop_back();
            }
            break;
        case Event::Kind::Cancel:
            reply.done = corners_.empty();
            corners_.clear();
            asked_ = false;
            break;
        default:
            break;
    }
    return reply;
}

Wet WipeRegionTool::wet() const {
    Wet wet{corners_, true, "wipe a region", std::nullopt};
    if (asked_) {
        wet.line.push_back(corners_.front());
    } else {
        wet.line.push_back(hand_);
    }
    return wet;
}

std::string WipeRegionTool::hint() const {
    return asked_                ? "answer at the foot"
           : corners_.empty()    ? "click its corners, or drag a box"
           : corners_.size() < 3 ? "click the next corner"
                                 : "Enter or a double click tells what would go";
}

}  // namespace crosstick::tools
