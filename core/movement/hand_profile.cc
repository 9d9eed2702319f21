#include "core/movement/hand_profile.h"

#include <algorithm>
#include <cmath>

#include "core/geodesy/plane_angles.h"

namespace crosstick::movement {
namespace {

constexpr double kStep = 25;          // metres, as heights of a model are sampled
constexpr double kMostSamples = 1e5;  // of one piece
constexpr Metres kSame{1e-6};

using Spot = HandProfile::Spot;

double nearestShare(geodesy::PlanePoint from, geodesy::PlanePoint to, geodesy::PlanePoint point) {
    const double east = (to.easting - from.easting).value();
    const double north = (to.northing - from.northing).value();
    const double square = east * east + north * north;
    const double along =
        (point.easting - from.easting).value() * east + (point.northing - from.northing).value() * north;
    return square > 0 ? std::clamp(along / square, 0.0, 1.0) : 0;
}

}  // namespace

PlaceOnRoute nearestOn(const std::vector<geodesy::PlanePoint>& vertices, geodesy::PlanePoint point) {
    Metres soFar{0};
    PlaceOnRoute best{Metres(0), vertices.front(), geodesy::planeDistance(vertices.front(), point)};
    for (std::size_t n = 0; n + 1 < vertices.size(); ++n) {
        const geodesy::PlanePoint a = vertices[n];
        const geodesy::PlanePoint b = vertices[n + 1];
        const double share = nearestShare(a, b, point);
        const Metres length = geodesy::planeDistance(a, b);
        const geodesy::PlanePoint at{a.easting + (b.easting - a.easting) * share,
                                     a.northing + (b.northing - a.northing) * share};
        const Metres off = geodesy::planeDistance(at, point);
        if (off < best.off) {
            best = {soFar + length * share, at, off};
        }
        soFar += length;
    }
    return best;
}

HandProfile::HandProfile(const plan::Route& route) {
    if (route.contours.empty() || route.vertices.empty()) {
        return;
    }
    along_.push_back(Metres(0));
    for (std::size_t n = 0; n + 1 < route.vertices.size(); ++n) {
        along_.push_back(along_.back() + geodesy::planeDistance(route.vertices[n], route.vertices[n + 1]));
    }
    for (const plan::ContourSpot& contour : route.contours) {
        const PlaceOnRoute place = nearestOn(route.vertices, contour.at);
        const Metres along = place.along;
        if (place.off > kBesideTheRoute) {
            continue;
        }
        const auto same = std::find_if(spots_.begin(), spots_.end(),
                                       [&](const Spot& spot) { return abs(spot.along - along) <= kSame; });
        if (same != spots_.end()) {
            same->height = contour.height;
        } else {
            spots_.push_back({along, contour.height});
        }
    }
    std::sort(spots_.begin(), spots_.end(), [](const Spot& a, const Spot& b) { return a.along < b.along; });
}

std::optional<Metres> HandProfile::heightAt(Metres along) const {
    if (spots_.size() < 2 || along < spots_.front().along - kSame || along > spots_.back().along + kSame) {
        return std::nullopt;
    }
    const auto after = std::lower_bound(spots_.begin(), spots_.end(), along,
                                        [](const Spot& spot, Metres place) { return spot.along < place; });
    if (after == spots_.end()) {
        return spots_.back().height;
    }
    if (after == spots_.begin()) {
        return after->height;
    }
    const auto before = after - 1;
    const double share = (along - before->along) / (after->along - before->along);
    return before->height + (after->height - before->height) * share;
}

std::vector<Spot> HandProfile::spotsFrom(Metres from, Metres to) const {
    std::vector<Spot> spots{{from, *heightAt(from)}};
    for (const Spot& spot : spots_) {
        if (spot.along > from + kSame && spot.along < to - kSame) {
            spots.push_back(spot);
        }
    }
    spots.push_back({to, *heightAt(to)});
    return spots;
}

std::optional<Relief> HandProfile::after(std::size_t vertex, Metres ground) const {
    if (vertex + 1 >= along_.size() || !heightAt(along_[vertex]) || !heightAt(along_[vertex + 1])) {
        return std::nullopt;
    }
    const Metres from = along_[vertex];
    const Metres length = along_[vertex + 1] - from;
    const double scale = length.value() > 0 ? ground / length : 1;
    Relief relief{};
    const std::vector<Spot> spots = spotsFrom(from, from + length);
    for (std::size_t n = 0; n + 1 < spots.size(); ++n) {
        const Metres run = (spots[n + 1].along - spots[n].along) * scale;
        const Metres rise = spots[n + 1].height - spots[n].height;
        (rise.value() >= 0 ? relief.climb : relief.descent) += abs(rise);
        relief.slope += Metres(std::hypot(run.value(), rise.value()));
        if (run.value() > 0 && std::abs(rise / run) > std::abs(relief.steepest.slope)) {
            relief.steepest = {rise / run, (spots[n].along - from) * scale + run / 2};
        }
    }
    const double steps = std::clamp(std::ceil(length.value() / kStep), 1.0, kMostSamples);
    for (double n = 0; n <= steps; ++n) {
        relief.heights.push_back(heightAt(from + length * (n / steps)).value_or(spots.back().height));
    }
    return relief;
}

}  // namespace crosstick::movement
