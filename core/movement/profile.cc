#include "core/movement/profile.h"

#include <algorithm>
#include <cmath>

#include "core/movement/faults.h"

namespace crosstick::movement {
namespace {

constexpr double kStep = 25;           // metres, as climb is summed
constexpr double kMostSpots = 200000;  // of one piece: beyond 5,000 km the step grows

geodesy::PlanePoint between(geodesy::PlanePoint a, geodesy::PlanePoint b, double share) {
    return {a.easting + (b.easting - a.easting) * share, a.northing + (b.northing - a.northing) * share};
}

std::optional<Metres> heightAt(const WorkGrid& grid, geodesy::PlanePoint onGrid, const sheets::HeightSource& heights) {
    const auto inPlan = grid.inPlan(onGrid);
    return inPlan ? heights.heightAt(*inPlan) : std::nullopt;
}

std::vector<ProfileSpot> spotsOf(const RouteFigures& figures, const WorkGrid& grid,
                                 const sheets::HeightSource& heights) {
    std::vector<ProfileSpot> spots;
    Metres soFar{0};
    for (const Leg& leg : figures.legs) {
        for (const Piece& piece : leg.pieces) {
            const double steps = std::clamp(std::ceil(piece.mapDistance.value() / kStep), 1.0, kMostSpots);
            for (double n = spots.empty() ? 0 : 1; n <= steps; ++n) {
                const auto place = between(piece.from, piece.to, n / steps);
                spots.push_back({soFar + piece.groundDistance * (n / steps), place, heightAt(grid, place, heights)});
            }
            soFar += piece.groundDistance;
        }
    }
    return spots;
}

/// The height between the spots on both sides of a place.
std::optional<Metres> heightOn(const std::vector<ProfileSpot>& spots, Metres ground) {
    const auto after = std::lower_bound(spots.begin(), spots.end(), ground,
                                        [](const ProfileSpot& spot, Metres place) { return spot.ground < place; });
    if (after == spots.end() || after == spots.begin()) {
        return spots.empty() ? std::nullopt : after == spots.end() ? spots.back().height : after->height;
    }
    const auto before = after - 1;
    if (!before->height || !after->height) {
        return std::nullopt;
    }
    const double share = (ground - before->ground) / (after->ground - before->ground);
    return *before->height + (*after->height - *before->height) * share;
}

std::vector<ProfileMark> marksOf(const RouteFigures& figures, const std::vector<Crossing>& met,
                                 const std::vector<ProfileSpot>& spots) {
    std::vector<ProfileMark> marks;
    const auto mark = [&](ProfileMark::Kind kind, const std::string& label, Metres ground) {
        marks.push_back({kind, label, ground, heightOn(spots, ground)});
    };
    if (!figures.legs.empty()) {
        mark(ProfileMark::Kind::RoutePoint, figures.legs.front().fromLabel, Metres(0));
    }
    for (const Leg& leg : figures.legs) {
        for (const Crossing& crossing : met) {
            if (crossing.leg == leg.number) {
                mark(ProfileMark::Kind::Line, crossing.label, crossing.groundSoFar);
            }
        }
        mark(ProfileMark::Kind::RoutePoint, leg.toLabel, leg.groundSoFar);
    }
    return marks;
}

std::vector<SteepPart> steepParts(const std::vector<ProfileSpot>& spots) {
    std::vector<SteepPart> parts;
    bool goesOn = false;
    for (std::size_t n = 1; n < spots.size(); ++n) {
        const Metres run = spots[n].ground - spots[n - 1].ground;
        const bool known = spots[n].height && spots[n - 1].height && run.value() > 0;
        const double slope = known ? (*spots[n].height - *spots[n - 1].height) / run : 0;
        if (std::abs(slope) < kSteep) {
            goesOn = false;
            continue;
        }
        if (!goesOn || (slope > 0) != (parts.back().steepest > 0)) {
            parts.push_back({spots[n - 1].ground, spots[n].ground, slope});
        }
        goesOn = true;
        SteepPart& part = parts.back();
        part.to = spots[n].ground;
        part.steepest = std::abs(slope) > std::abs(part.steepest) ? slope : part.steepest;
    }
    return parts;
}

}  // namespace

Result<Profile> profileOf(const plan::Plan& plan, const RouteFigures& figures, const sheets::HeightSource& heights) {
    const auto grid = WorkGrid::of(plan);
    const auto met = crossings(plan, figures);
    if (!grid || !met) {
        return tl::unexpected(grid ? met.error() : grid.error());
    }
    Profile profile;
    profile.route = figures.name;
    profile.spots = spotsOf(figures, *grid, heights);
    bool any = false;
    for (const ProfileSpot& spot : profile.spots) {
        if (spot.height) {
            profile.lowest = any ? std::min(profile.lowest, *spot.height) : *spot.height;
            profile.highest = any ? std::max(profile.highest, *spot.height) : *spot.height;
            any = true;
        }
    }
    if (!any) {
        return fail(kNoHeights, {{"route", figures.name}});
    }
    profile.marks = marksOf(figures, *met, profile.spots);
    profile.steep = steepParts(profile.spots);
    profile.climb = figures.climb;
    profile.descent = figures.descent;
    return profile;
}

}  // namespace crosstick::movement
