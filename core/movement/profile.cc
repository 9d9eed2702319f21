#include "core/movement/profile.h"

#include <algorithm>
#include <cmath>

#include "core/movement/faults.h"
#include "core/movement/hand_profile.h"
#include "core/movement/leg_ends.h"

namespace crosstick::movement {
namespace {

constexpr double kStep = 25;           // metres, as climb is summed
constexpr double kMostSpots = 200000;  // of one piece: beyond 5,000 km the step grows

geodesy::PlanePoint between(geodesy::PlanePoint a, geodesy::PlanePoint b, double share) {
    return {a.easting + (b.easting - a.easting) * share, a.northing + (b.northing - a.northing) * share};
}

/// Walks the legs' pieces and asks for the ground under them.
class ProfileWalk {
  public:
    ProfileWalk(const plan::Plan& plan, const RouteFigures& figures, const WorkGrid& grid,
                const sheets::HeightSource* heights)
        : figures_(figures), grid_(grid), heights_(heights) {
        if (const auto route = plan.route(figures.route); route && route->vertices.size() > 1) {
            byHand_ = HandProfile(*route);
            vertex_ = legEnds(plan, *route).front().stop.vertex;
        }
    }

    void walk(Profile& profile) {
        for (const Leg& leg : figures_.legs) {
            for (const Piece& piece : leg.pieces) {
                for (const double share : sharesOf(piece)) {
                    if (share > 0 || profile.spots.empty()) {
                        profile.spots.push_back(spotAt(piece, share, profile.fromContours));
                    }
                }
                soFar_ += piece.groundDistance;
                ++vertex_;
            }
        }
    }

  private:
    [[nodiscard]] std::optional<Metres> modelled(geodesy::PlanePoint onGrid) const {
        if (heights_ == nullptr) {
            return std::nullopt;
        }
        const auto inPlan = grid_.inPlan(onGrid);
        return inPlan ? heights_->heightAt(*inPlan) : std::nullopt;
    }

    /// Shares of a piece at which spots stand, rising.
    [[nodiscard]] std::vector<double> sharesOf(const Piece& piece) const {
        const double steps = std::clamp(std::ceil(piece.mapDistance.value() / kStep), 1.0, kMostSpots);
        std::vector<double> shares;
        for (double n = 0; n <= steps; ++n) {
            shares.push_back(n / steps);
        }
        for (const HandProfile::Spot& spot : byHand_.spots()) {
            const Metres from = byHand_.along(vertex_);
            const double share = (spot.along - from) / (byHand_.along(vertex_ + 1) - from);
            // where the model rules its sums are those over even steps
            if (share > 0 && share < 1 && !modelled(between(piece.from, piece.to, share))) {
                shares.push_back(share);
            }
        }
        std::sort(shares.begin(), shares.end());
        shares.erase(std::unique(shares.begin(), shares.end()), shares.end());
        return shares;
    }

    [[nodiscard]] ProfileSpot spotAt(const Piece& piece, double share, bool& fromContours) const {
        const auto place = between(piece.from, piece.to, share);
        ProfileSpot spot{soFar_ + piece.groundDistance * share, place, modelled(place)};
        if (!spot.height && !byHand_.spots().empty()) {
            const Metres from = byHand_.along(vertex_);
            spot.height = byHand_.heightAt(from + (byHand_.along(vertex_ + 1) - from) * share);
            fromContours = fromContours || spot.height;
        }
        return spot;
    }

    const RouteFigures& figures_;
    const WorkGrid& grid_;
    const sheets::HeightSource* heights_;
    HandProfile byHand_;
    std::size_t vertex_ = 0;
    Metres soFar_{0};
};

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

Result<Profile> profileOf(const plan::Plan& plan, const RouteFigures& figures, const sheets::HeightSource* heights) {
    const auto grid = WorkGrid::of(plan);
    const auto met = crossings(plan, figures);
    if (!grid || !met) {
        return tl::unexpected(grid ? met.error() : grid.error());
    }
    Profile profile;
    profile.route = figures.name;
    ProfileWalk(plan, figures, *grid, heights).walk(profile);
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
