#include "ui/tools/follow_tool.h"

#include <fmt/format.h>

#include "core/geodesy/plane_angles.h"
#include "core/terrain/inner_side.h"
#include "core/units/number_text.h"
#include "ui/tools/hit.h"
#include "ui/tools/place_tool.h"

namespace crosstick::tools {

namespace {

constexpr double kSlip = 0.4;  // of the reach: a hand that clicks moves no farther

FollowedPieces::Way wayOf(const Event& event) {
    return event.second ? FollowedPieces::Way::Straight : FollowedPieces::Way::Printed;
}

}  // namespace

void FollowTool::clicked(const Event& event) {
    endWanted_ = false;
    pieces_.goTo(event.at, wayOf(event));
}

void FollowTool::settleGrip() {
    if (grip_) {
        const Event at = grip_->pressed;
        grip_.reset();
        clicked(at);
    }
}

void FollowTool::pressed(const Event& event, Metres reach) {
    settleGrip();
    hand_ = event.at;
    if (const auto piece = event.held ? pieces_.pieceAt(event.at, reach) : std::nullopt) {
        grip_ = Grip{*piece, event};
    } else {
        clicked(event);
    }
}

void FollowTool::moved(const Event& event, Metres reach) {
    hand_ = event.at;
    if (!grip_ || isPulling() || apart(event.at, grip_->pressed.at) <= reach * kSlip) {
        return;
    }
    if (event.held) {
        grip_->is = Grip::Is::Pulling;
    } else {
        settleGrip();
    }
}

void FollowTool::released(const Event& event, Metres reach) {
    hand_ = event.at;
    if (isPulling() || (grip_ && apart(event.at, grip_->pressed.at) > reach * kSlip)) {
        pieces_.pull(grip_->piece, event.at, wayOf(event));
        grip_.reset();
        endWanted_ = false;
    } else {
        settleGrip();
    }
}

/// On the side that was chosen, else inside our boundary; where no boundary of ours tells a side, on the right.
void FollowTool::renewBeside(const Ground& ground) {
    beside_.reset();
    const plan::Points followed = pieces_.line();
    if (!rail_ || followed.size() < 2) {
        return;
    }
    const Metres distance = rail_->distance();
    std::optional<terrain::Side> side = rail_->side;
    if (!side) {
        side = terrain::innerSide(ground.plan,
                                  terrain::handrail(followed, distance, terrain::Side::Left).value_or(plan::Points{}),
                                  terrain::handrail(followed, distance, terrain::Side::Right).value_or(plan::Points{}));
    }
    Beside beside{terrain::handrail(followed, distance, side.value_or(terrain::Side::Right)), {}, distance};
    beside.words = fmt::format("{} m {} of the line", numberText(distance.value()),
                               side == terrain::Side::Left ? "left" : "right");
    if (const auto inside = beside.line ? terrain::leastInside(ground.plan, *beside.line) : std::nullopt) {
        beside.words += fmt::format(", {} m {} our boundary", geodesy::distanceText(abs(*inside)),
                                    *inside < Metres(0) ? "outside" : "inside");
    } else if (!rail_->side) {
        beside.words += ": no boundary tells our side, name our unit on the plan's card";
    }
    beside_ = std::move(beside);
}

Reply FollowTool::finished(const measures::Entry& kind, const Ground& ground) {
    Reply reply;
    plan::Points points = pieces_.line();
    if (points.size() < 2) {
        return reply;
    }
    if (beside_) {
        if (!beside_->line) {
            reply.refused = beside_->line.error();
            endWanted_ = false;
            return reply;
        }
        points = *beside_->line;
        reply.said = "Handrail: " + beside_->words + ".";
    }
    plan::Measure measure = newMeasure(kind, ground.plan, ground.newId(), std::move(points));
    const plan::ItemId id = measure.id;
    reply.commit = Commit{plan::withMeasure(ground.plan, std::move(measure), ground.film),
                          rail_ ? "draw a handrail" : "follow the map", true, &kind == &entry_};
    reply.select = std::optional<plan::ItemId>(id);
    reply.done = true;
    grip_.reset();
    pieces_.clear();
    return reply;
}

/// What is being pulled first, then the last click or pull.
void FollowTool::takeBack() {
    endWanted_ = false;
    if (grip_) {
        grip_.reset();
    } else {
        pieces_.takeBack();
    }
}

/// The pull first, then the line, then the tool.
bool FollowTool::isGivenUp() {
    endWanted_ = false;
    if (grip_) {
        grip_.reset();
        return false;
    }
    const bool isNothingLeft = !pieces_.hasBegun();
    pieces_.clear();
    return isNothingLeft;
}

void FollowTool::hear(const Event& event, Metres reach, Reply& reply) {
    switch (event.kind) {
        case Event::Kind::Press:
            pressed(event, reach);
            break;
        case Event::Kind::Move:
            moved(event, reach);
            break;
        case Event::Kind::Release:
            released(event, reach);
            break;
        case Event::Kind::Again:  // no point of its own: it ends the line
        case Event::Kind::Finish:
            settleGrip();
            endWanted_ = !pieces_.isEmpty();
            break;
        case Event::Kind::TakeBack:
            takeBack();
            break;
        case Event::Kind::Cancel:
            reply.done = isGivenUp();
            break;
        case Event::Kind::Nudge:
        case Event::Kind::NextPoint:
        case Event::Kind::LastPoint:
            break;
    }
}

Reply FollowTool::take(const Event& event, const Ground& ground) {
    what_ = rail_ ? "handrail" : suggestedLabel(entry_, ground.plan);
    Reply reply;
    const bool wasWaiting = pieces_.isWaiting();
    hear(event, ground.reach, reply);
    reply.refused = pieces_.takeAnswers();
    if (reply.refused) {
        grip_.reset();  // its piece may be gone
        endWanted_ = false;
    }
    isOnLine_ = !isPulling() && pieces_.pieceAt(hand_, ground.reach).has_value();
    if (event.kind != Event::Kind::Move || pieces_.isWaiting() != wasWaiting ||
        (beside_ && beside_->distance != rail_->distance())) {
        renewBeside(ground);
    }
    return endWanted_ && !pieces_.isWaiting() ? finished(entry_, ground) : reply;
}

std::optional<Reply> FollowTool::endAs(const measures::Entry& kind, const Ground& ground) {
    const bool isLine = kind.shape == measures::Shape::Line || kind.shape == measures::Shape::Area;
    if (!isLine || kind.points.most || pieces_.isWaiting() ||
        pieces_.line().size() < static_cast<std::size_t>(kind.points.least)) {
        return std::nullopt;
    }
    renewBeside(ground);
    Reply reply = finished(kind, ground);
    return reply.commit ? std::optional(std::move(reply)) : std::nullopt;
}

Wet FollowTool::wet() const {
    if (isPulling()) {
        Wet wet{pieces_.pulledLine(grip_->piece, hand_), false, what_, std::nullopt};
        wet.told = Told{{}, hint(), what_};
        return wet;
    }
    Wet wet{pieces_.line(), false, what_, std::nullopt};
    if (pieces_.hasBegun()) {
        wet.from = wet.line.size() - 1;
    }
    if (!endWanted_) {
        wet.line.push_back(hand_);
    }
    if (beside_ && beside_->line) {
        wet.others.push_back(*beside_->line);
        wet.told = Told{beside_->words, hint(), "handrail"};
    } else if (isOnLine_) {
        wet.told = Told{{}, hint(), what_};
    }
    return wet;
}

std::string FollowTool::hint() const {
    return !pieces_.hasBegun()   ? "click where the printed line begins"
           : isPulling()         ? "let go where the right line is printed"
           : pieces_.isWaiting() ? "looking for the line"
           : pieces_.isEmpty()   ? "click where it ends, Shift for a straight piece"
           : isOnLine_           ? "drag it to where the right line is printed"
                                 : "click farther along, drag where it strays, Enter ends it";
}

}  // namespace crosstick::tools
