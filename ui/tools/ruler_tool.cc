#include "ui/tools/ruler_tool.h"

#include <cmath>

#include <fmt/format.h>

#include "ui/tools/place_tool.h"

namespace crosstick::tools {
namespace {

std::string angle(Degrees azimuth, geodesy::AngleUnit unit) {
    return geodesy::azimuthText(azimuth, unit) + (unit == geodesy::AngleUnit::Degrees ? "\u00b0" : " mils");
}

Degrees halfCircle(Degrees turn) {
    return Degrees(std::remainder(turn.value(), 360));
}

/// The angle between two pieces, as a protractor laid on their corner shows it: 0 to 180.
Degrees bendBetween(Degrees before, Degrees after) {
    const double back = fullCircle(before + Degrees(180) - after).value();
    return Degrees(back > 180 ? 360 - back : back);
}

}  // namespace

plan::Points RulerTool::line() const {
    plan::Points all = points_;
    if (!laid_) {
        all.push_back(hand_);
    }
    return all;
}

void RulerTool::read() {
    told_.reset();
    rose_.reset();
    const plan::Points all = line();
    if (all.size() < 2) {
        return;
    }
    std::vector<Reading> pieces;
    for (std::size_t n = 0; n + 1 < all.size(); ++n) {
        if (const auto piece = ways_.read(all[n], all[n + 1]); piece && isFinite(piece->grid)) {
            pieces.push_back(*piece);
        }
    }
    if (pieces.empty()) {
        return;
    }
    const Reading& last = pieces.back();
    const geodesy::AngleUnit unit = ways_.unit();
    Metres map;
    Metres ground;
    for (const Reading& piece : pieces) {
        map += piece.map;
        ground += piece.ground;
    }
    Told told;
    told.first = fmt::format("{} M   {} m", angle(last.magnetic, unit), geodesy::distanceText(last.map));
    told.second = fmt::format("grid {} \u00b7 true {} \u00b7 back {} M", angle(last.grid, unit),
                              angle(last.trueNorth, unit), angle(geodesy::backAzimuth(last.magnetic), unit));
    told.third = fmt::format("map {:.1f} mm \u00b7 ground {} m", onPaper(last.map, ways_.scale).value(),
                             std::llround(last.ground.value()));
    if (pieces.size() > 1) {
        told.third = fmt::format("map {:.1f} mm \u00b7 all {:.1f} mm, {} m \u00b7 bend {}",
                                 onPaper(last.map, ways_.scale).value(), onPaper(map, ways_.scale).value(),
                                 std::llround(ground.value()),
                                 angle(bendBetween(pieces[pieces.size() - 2].grid, last.grid), unit));
    }
    told_ = std::move(told);
    rose_ = Rose{all[all.size() - 2], halfCircle(last.grid - last.magnetic), halfCircle(last.grid - last.trueNorth)};
}

Reply RulerTool::kept(const Ground& ground) {
    Reply reply;
    const plan::Points all = points_;
    if (all.size() < 2 || !ground.plan.film(ground.film)) {
        return reply;
    }
    plan::Measure measure = newMeasure(*measures::find("free-line"), ground.plan, ground.newId(), all);
    const plan::ItemId id = measure.id;
    reply.commit =
        Commit{plan::withMeasure(ground.plan, std::move(measure), ground.film), "keep a measured line", true};
    reply.select = std::optional(id);
    reply.done = true;
    points_.clear();
    return reply;
}

Reply RulerTool::take(const Event& event, const Ground& ground) {
    Reply reply;
    if (event.kind <= Event::Kind::Release) {
        hand_ = event.at;
    }
    switch (event.kind) {
        case Event::Kind::Press:
            if (laid_) {
                points_.clear();
                laid_ = false;
            }
            points_.push_back(event.at);
            break;
        case Event::Kind::Again:
            laid_ = points_.size() > 1;
            break;
        case Event::Kind::Finish:
            reply = kept(ground);
            break;
        case Event::Kind::TakeBack:
            laid_ = false;
            if (!points_.empty()) {
                points_.pop_back();
            }
            break;
        case Event::Kind::Cancel:
            reply.done = points_.empty();
            points_.clear();
            laid_ = false;
            break;
        default:
            break;
    }
    read();
    return reply;
}

Wet RulerTool::wet() const {
    Wet wet{line(), false, "ruler and protractor", std::nullopt};
    wet.told = told_;
    wet.rose = rose_;
    wet.belongs = Wet::Belongs::Nowhere;  // it reads on a pinned film as on any other
    return wet;
}

std::string RulerTool::hint() const {
    return "click from where to read; nothing is left on the film";
}

}  // namespace crosstick::tools
