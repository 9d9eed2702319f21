#include "ui/tools/fix_tool.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/geodesy/plane_angles.h"
#include "ui/tools/place_tool.h"

namespace crosstick::tools {
namespace {

constexpr std::size_t kMost = 3;
constexpr Metres kSeen{20000};  ///< so far a line of sight is drawn before it crosses another

std::string errorWords(const drafting::Fix& fix) {
    return fix.triangle.empty() ? std::string("two lines: nothing checks them")
                                : fmt::format("triangle of error {} m", std::llround(fix.longestSide.value()));
}

std::string cutWords(const drafting::Fix& fix) {
    const auto cut = std::lround(fix.cut.value());
    return fix.cut < drafting::kLeastCut
               ? fmt::format("the lines cross at {}\u00b0 only: take a point farther aside", cut)
               : fmt::format("the lines cross at {}\u00b0", cut);
}

}  // namespace

std::vector<drafting::Sight> FixTool::sights() const {
    std::vector<drafting::Sight> told;
    for (const Known& known : known_) {
        if (*known.azimuth) {
            told.push_back({known.onGrid, **known.azimuth});
        }
    }
    return told;
}

void FixTool::clicked(const Event& event, Reply& reply) {
    std::erase_if(known_, [](const Known& known) { return !*known.azimuth; });  // another point in its place
    if (known_.size() >= kMost) {
        reply.said = "Three lines are enough. Enter keeps the point, Backspace takes the last line back.";
        return;
    }
    const auto onGrid = ways_.onGrid(event.at);
    if (!onGrid) {
        reply.refused = onGrid.error();
        return;
    }
    known_.push_back({event.at, *onGrid});
    ask_(event.at, [answer = std::weak_ptr(known_.back().azimuth)](Degrees gridAzimuth) {
        if (const auto held = answer.lock()) {
            *held = gridAzimuth;
        }
    });
}

void FixTool::renew(Reply& reply) {
    const auto told = sights();
    if (told.size() == sighted_) {
        return;
    }
    sighted_ = told.size();
    fix_.reset();
    if (told.size() < 2) {
        return;
    }
    auto fix = drafting::fixBy(told);
    if (!fix) {
        reply.refused = fix.error();
        known_.pop_back();
        sighted_ = known_.size() + 1;  // looked at again with those that are left
        Reply ignored;
        renew(ignored);
        return;
    }
    fix_ = std::move(*fix);
}

Reply FixTool::kept(const Ground& ground) {
    Reply reply;
    const auto place = fix_ ? ways_.inPlan(fix_->at) : Result<geodesy::PlanePoint>{};
    if (!fix_ || !place || !ground.plan.film(ground.film)) {
        reply.said = fix_ ? std::string() : "Two lines of sight are needed: click a known point and give its azimuth.";
        return reply;
    }
    plan::Measure measure = newMeasure(entry_, ground.plan, ground.newId(), {*place});
    const plan::ItemId id = measure.id;
    reply.said = "By " + name_ + ": " + errorWords(*fix_) + "; " + cutWords(*fix_) + ".";
    reply.commit = Commit{plan::withMeasure(ground.plan, std::move(measure), ground.film), "point by " + name_, true};
    reply.select = std::optional(id);
    reply.done = true;
    known_.clear();
    return reply;
}

Reply FixTool::take(const Event& event, const Ground& ground) {
    Reply reply;
    if (event.kind <= Event::Kind::Release) {
        hand_ = event.at;
    }
    switch (event.kind) {
        case Event::Kind::Press:
            clicked(event, reply);
            break;
        case Event::Kind::Finish:
            renew(reply);
            return reply.refused ? reply : kept(ground);
        case Event::Kind::TakeBack:
            if (!known_.empty()) {
                known_.pop_back();
            }
            break;
        case Event::Kind::Cancel:
            reply.done = known_.empty();
            known_.clear();
            break;
        default:
            break;
    }
    renew(reply);
    return reply;
}

plan::Points FixTool::inPlan(const plan::Points& onGrid) const {
    plan::Points points;
    for (const geodesy::PlanePoint at : onGrid) {
        if (const auto place = ways_.inPlan(at)) {
            points.push_back(*place);
        }
    }
    return points;
}

Wet FixTool::wet() const {
    Wet wet{{hand_}, false, name_, std::nullopt};
    for (const drafting::Sight& sight : sights()) {
        const Metres far = fix_ ? geodesy::planeDistance(sight.from, fix_->at) * 1.1 + Metres(200) : kSeen;
        wet.others.push_back(inPlan({sight.from, drafting::polarPlace(sight.from, sight.gridAzimuth, far)}));
    }
    for (const Known& known : known_) {
        wet.marks.push_back(known.at);
    }
    if (fix_) {
        const auto at = inPlan({fix_->at});
        wet.marks.insert(wet.marks.end(), at.begin(), at.end());
        wet.told = Told{errorWords(*fix_), cutWords(*fix_),
                        known_.size() < kMost ? "Enter keeps it; a third point checks it" : "Enter keeps it"};
    }
    return wet;
}

std::string FixTool::hint() const {
    return !known_.empty() && !*known_.back().azimuth ? "give its azimuth at the foot"
           : known_.empty()                           ? "click a known point"
                                                      : "click the next known point";
}

}  // namespace crosstick::tools
