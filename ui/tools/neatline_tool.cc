#include "ui/tools/neatline_tool.h"

#include "core/sheets/neatline.h"
#include "ui/tools/hit.h"

namespace crosstick::tools {

using geodesy::PlanePoint;

void NeatlineTool::showPresent(const plan::Plan& plan) {
    const plan::SheetPtr sheet = plan.sheet(sheet_);
    shown_ = sheet ? plan::outline(*sheet) : std::vector<plan::RasterSpot>{};
}

plan::Points NeatlineTool::inPlan() const {
    plan::Points points;
    points.reserve(shown_.size());
    for (const plan::RasterSpot corner : shown_) {
        points.push_back(ways_.inPlan(corner).value_or(PlanePoint{}));
    }
    return points;
}

std::optional<std::size_t> NeatlineTool::cornerAt(PlanePoint at, Metres reach) const {
    std::optional<std::size_t> nearest;
    Metres least = reach;
    const plan::Points corners = inPlan();
    for (std::size_t n = 0; n < corners.size(); ++n) {
        if (const Metres away = apart(corners[n], at); away <= least) {
            nearest = n;
            least = away;
        }
    }
    return nearest;
}

std::optional<std::size_t> NeatlineTool::edgeAt(PlanePoint at, Metres reach) const {
    const plan::Points corners = inPlan();
    for (std::size_t n = 0; n < corners.size(); ++n) {
        const std::size_t next = (n + 1) % corners.size();
        if (fromPiece(at, corners[n], corners[next]) <= reach) {
            return next;
        }
    }
    return std::nullopt;
}

/// The edit, or why there is none; afterwards what holds is shown.
Reply NeatlineTool::kept(const plan::Plan& plan, std::vector<plan::RasterSpot> corners, std::string caption) {
    Reply reply;
    grip_.reset();
    const plan::SheetPtr sheet = plan.sheet(sheet_);
    if (!sheet) {
        reply.done = true;
        return reply;
    }
    auto sound = sheets::soundNeatline(std::move(corners), *sheet);
    if (!sound) {
        reply.refused = sound.error();
        showPresent(plan);
        return reply;
    }
    shown_ = *sound;
    if (*sound != plan::outline(*sheet)) {
        plan::Sheet changed = *sheet;
        changed.neatline = std::move(*sound);
        plan::PlanBuilder builder(plan);
        builder.put(std::move(changed));
        reply.commit = Commit{std::move(builder).build(), std::move(caption), false};
    }
    return reply;
}

Reply NeatlineTool::pressed(const Event& event, const Ground& ground) {
    const auto corner = cornerAt(event.at, ground.reach);
    if (event.second && corner) {
        std::vector<plan::RasterSpot> fewer = shown_;
        fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(*corner));
        return kept(ground.plan, std::move(fewer), "take a corner off the map's edge");
    }
    const auto spot = ways_.inRaster(event.at);
    const auto edge = event.second ? edgeAt(event.at, ground.reach) : std::nullopt;
    if (edge && spot) {
        std::vector<plan::RasterSpot> more = shown_;
        more.insert(more.begin() + static_cast<std::ptrdiff_t>(*edge), *spot);
        return kept(ground.plan, std::move(more), "set a corner of the map's edge");
    }
    grip_ = corner;
    return {};
}

Reply NeatlineTool::take(const Event& event, const Ground& ground) {
    Reply reply;
    if (!grip_) {
        showPresent(ground.plan);
    }
    switch (event.kind) {
        case Event::Kind::Press:
        case Event::Kind::Again:
            return pressed(event, ground);
        case Event::Kind::Move:
            if (const auto spot = ways_.inRaster(event.at); grip_ && event.held && spot) {
                shown_[*grip_] = *spot;
            }
            return reply;
        case Event::Kind::Release:
            return grip_ ? kept(ground.plan, shown_, "move a corner of the map's edge") : reply;
        case Event::Kind::Cancel:
            reply.done = !grip_;
            grip_.reset();
            showPresent(ground.plan);
            return reply;
        case Event::Kind::Finish:
            reply.done = true;
            return reply;
        case Event::Kind::TakeBack:
        case Event::Kind::Nudge:
        case Event::Kind::NextPoint:
        case Event::Kind::LastPoint:
            break;
    }
    return reply;
}

Wet NeatlineTool::wet() const {
    Wet wet;
    wet.what = "edge of the map";
    wet.belongs = Wet::Belongs::ToThePlan;
    wet.line = inPlan();
    wet.closes = true;
    wet.marks = wet.line;
    return wet;
}

}  // namespace crosstick::tools
