#include "ui/tools/follow_tool.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/geodesy/plane_angles.h"
#include "core/terrain/inner_side.h"
#include "core/units/number_text.h"
#include "ui/tools/place_tool.h"

namespace crosstick::tools {

bool FollowTool::isWaiting() const {
    return std::any_of(pieces_.begin(), pieces_.end(), [](const Piece& piece) { return piece.answer != nullptr; });
}

void FollowTool::clicked(const Event& event) {
    hand_ = event.at;
    endWanted_ = false;
    if (!start_) {
        start_ = event.at;
        return;
    }
    const geodesy::PlanePoint from = pieces_.empty() ? *start_ : pieces_.back().to;
    const std::optional<terrain::Vein> like = pieces_.empty() ? std::nullopt : pieces_.back().vein;
    Piece piece{event.at, {from, event.at}, std::nullopt, nullptr};
    if (!event.second) {
        piece.answer = std::make_shared<std::optional<Found>>();
        seek_(from, event.at, like, [answer = std::weak_ptr(piece.answer)](Found found) {
            if (const auto held = answer.lock()) {
                held->emplace(std::move(found));
            }
        });
    }
    pieces_.push_back(std::move(piece));
}

void FollowTool::takeAnswers(Reply& reply) {
    for (std::size_t n = 0; n < pieces_.size(); ++n) {
        Piece& piece = pieces_[n];
        if (!piece.answer || !*piece.answer) {
            continue;
        }
        Found& found = **piece.answer;
        if (!found) {
            reply.refused = found.error();
            pieces_.resize(n);  // what was clicked after it hangs in the air
            endWanted_ = false;
            return;
        }
        piece.line = std::move(found->line);
        piece.vein = found->vein;
        piece.answer.reset();
    }
}

plan::Points FollowTool::line() const {
    plan::Points line;
    for (const Piece& piece : pieces_) {
        line.insert(line.end(), piece.line.begin(), piece.line.end());
    }
    line.erase(std::unique(line.begin(), line.end()), line.end());
    return line;
}

/// On the side that was chosen, else inside our boundary; where no boundary of ours tells a side, on the right.
void FollowTool::renewBeside(const Ground& ground) {
    beside_.reset();
    const plan::Points followed = line();
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
    plan::Points points = line();
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
    start_.reset();
    pieces_.clear();
    return reply;
}

void FollowTool::takeBack() {
    endWanted_ = false;
    if (pieces_.empty()) {
        start_.reset();
    } else {
        pieces_.pop_back();
    }
}

Reply FollowTool::take(const Event& event, const Ground& ground) {
    what_ = rail_ ? "handrail" : suggestedLabel(entry_, ground.plan);
    Reply reply;
    const bool wasWaiting = isWaiting();
    switch (event.kind) {
        case Event::Kind::Press:
            clicked(event);
            break;
        case Event::Kind::Move:
        case Event::Kind::Release:
            hand_ = event.at;
            break;
        case Event::Kind::Again:  // no point of its own: it ends the line
        case Event::Kind::Finish:
            endWanted_ = !pieces_.empty();
            break;
        case Event::Kind::TakeBack:
            takeBack();
            break;
        case Event::Kind::Cancel:
            reply.done = !start_;
            start_.reset();
            pieces_.clear();
            endWanted_ = false;
            break;
        case Event::Kind::Nudge:
        case Event::Kind::NextPoint:
        case Event::Kind::LastPoint:
            break;
    }
    takeAnswers(reply);
    if (event.kind != Event::Kind::Move || isWaiting() != wasWaiting ||
        (beside_ && beside_->distance != rail_->distance())) {
        renewBeside(ground);
    }
    return endWanted_ && !isWaiting() ? finished(entry_, ground) : reply;
}

std::optional<Reply> FollowTool::endAs(const measures::Entry& kind, const Ground& ground) {
    const bool isLine = kind.shape == measures::Shape::Line || kind.shape == measures::Shape::Area;
    if (!isLine || kind.points.most || isWaiting() || line().size() < static_cast<std::size_t>(kind.points.least)) {
        return std::nullopt;
    }
    renewBeside(ground);
    Reply reply = finished(kind, ground);
    return reply.commit ? std::optional(std::move(reply)) : std::nullopt;
}

Wet FollowTool::wet() const {
    Wet wet{line(), false, what_, std::nullopt};
    if (wet.line.empty() && start_) {
        wet.line.push_back(*start_);
    }
    if (start_) {
        wet.from = wet.line.size() - 1;
    }
    if (!endWanted_) {
        wet.line.push_back(hand_);
    }
    if (beside_ && beside_->line) {
        wet.others.push_back(*beside_->line);
        wet.told = Told{beside_->words, hint(), "handrail"};
    }
    return wet;
}

std::string FollowTool::hint() const {
    return !start_           ? "click where the printed line begins"
           : isWaiting()     ? "looking for the line"
           : pieces_.empty() ? "click where it ends, Shift for a straight piece"
                             : "click farther along, or Enter ends it";
}

}  // namespace crosstick::tools
