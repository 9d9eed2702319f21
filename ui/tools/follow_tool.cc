#include "ui/tools/follow_tool.h"

#include <algorithm>

#include "core/plan/numbering.h"
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

Reply FollowTool::finished(const Ground& ground) {
    Reply reply;
    plan::Points points = line();
    if (points.size() < 2) {
        return reply;
    }
    if (rail_) {
        auto beside = terrain::handrail(points, terrain::kUsualHandrail, *rail_);
        if (!beside) {
            reply.refused = beside.error();
            endWanted_ = false;
            return reply;
        }
        points = std::move(*beside);
    }
    plan::Measure measure;
    measure.id = ground.newId();
    measure.kind = entry_.kind;
    measure.points = std::move(points);
    plan::Called called = plan::calledBy({&entry_, {}, {}}, ground.plan);
    measure.number = std::move(called.number);
    measure.name = std::move(called.name);
    const plan::ItemId id = measure.id;
    reply.commit = Commit{plan::withMeasure(ground.plan, std::move(measure), ground.film),
                          rail_ ? "draw a handrail" : "follow the map", true};
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
    what_ = rail_ ? "handrail, 100 m" : suggestedLabel(entry_, ground.plan);
    Reply reply;
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
    return endWanted_ && !isWaiting() ? finished(ground) : reply;
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
    return wet;
}

std::string FollowTool::hint() const {
    return !start_           ? "click where the printed line begins"
           : isWaiting()     ? "looking for the line"
           : pieces_.empty() ? "click where it ends, Shift for a straight piece"
                             : "click farther along, or Enter ends it";
}

}  // namespace crosstick::tools
