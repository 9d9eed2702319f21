#include "ui/press/profile_page.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/drawing/dashes.h"
#include "core/movement/paper_figures.h"
#include "core/units/number_text.h"
#include "ui/press/said.h"

namespace crosstick::press {
namespace {

using drawing::Point;
using drawing::Weight;
using movement::Profile;
using movement::ProfileMark;

constexpr double kAxisLeft = 22;  // room for heights in figures
constexpr double kAxisRight = 286;
constexpr double kLabels = 22;     // height of the labels' room over the picture
constexpr double kAxisFoot = 182;  // room for metres under it
constexpr double kGroundPen = 0.5;
constexpr double kSteepPen = 1.3;
constexpr double kTick = 1.5;
constexpr drawing::Dash kHeightLine{0.5, 2.0};
constexpr double kLabelRow = 3.4;
constexpr Hand kAxis{1.8, Weight::Regular};
constexpr Hand kPointLabel{2.2, Weight::Bold};
constexpr Hand kLineLabel{2.0, Weight::Regular};

/// A round number that a range is parted by into at most so many parts: 1, 2 or 5 times a power of ten.
double roundStep(double range, double most) {
    const double least = std::max(range / most, 1e-9);
    const double power = std::pow(10, std::floor(std::log10(least)));
    for (const double times : {1.0, 2.0, 5.0}) {
        if (times * power >= least) {
            return times * power;
        }
    }
    return 10 * power;
}

/// From ground and height to the page.
struct Scales {
    double top, lowest, highest, length;  // millimetres, metres

    [[nodiscard]] double x(Metres ground) const {
        return kAxisLeft + (kAxisRight - kAxisLeft) * (length > 0 ? ground.value() / length : 0);
    }
    [[nodiscard]] double y(Metres height) const {
        return kAxisFoot - (kAxisFoot - top) * (height.value() - lowest) / (highest - lowest);
    }
    /// How many times heights are drawn too high.
    [[nodiscard]] double times() const {
        return length > 0 ? (kAxisFoot - top) / (highest - lowest) / ((kAxisRight - kAxisLeft) / length) : 1;
    }
};

Scales scalesOf(const Profile& profile, double top) {
    const double step = roundStep(std::max(10.0, (profile.highest - profile.lowest).value()), 8);
    const double lowest = std::floor(profile.lowest.value() / step) * step;
    const double highest = std::max(std::ceil(profile.highest.value() / step) * step, lowest + step);
    return {top, lowest, highest, profile.spots.empty() ? 0 : profile.spots.back().ground.value()};
}

void drawDashed(CardPen& pen, Point from, Point to, drawing::Dash dash, double width) {
    const drawing::Path line({from, to}, false);
    for (const drawing::Polyline& one : drawing::dashed(line, dash, drawing::CornerRule::UsersLine)) {
        pen.line(one.points.front(), one.points.back(), width);
    }
}

void drawAxes(CardPen& pen, const Scales& scales) {
    const double rise = roundStep(scales.highest - scales.lowest, 8);
    for (double height = scales.lowest; height <= scales.highest + rise / 2; height += rise) {
        const double y = scales.y(Metres(height));
        drawDashed(pen, {kAxisLeft, y}, {kAxisRight, y}, kHeightLine, kThinPen * 0.6);
        const std::string unit = height + rise / 2 > scales.highest ? " m" : "";
        pen.write(numberText(height, 0) + unit, {kAxisLeft - 2, y + kAxis.capHeight / 2}, kAxis, Align::Right);
    }
    const double way = roundStep(scales.length, 12);
    for (double ground = 0; ground <= scales.length; ground += way) {
        const double x = scales.x(Metres(ground));
        pen.line({x, kAxisFoot}, {x, kAxisFoot + kTick}, kThinPen);
        pen.write(numberText(ground, 0) + (ground == 0 ? " m" : ""), {x, kAxisFoot + kTick + 3}, kAxis, Align::Middle);
    }
    pen.line({kAxisLeft, kAxisFoot}, {kAxisRight, kAxisFoot}, kThickPen);
    pen.line({kAxisLeft, scales.top}, {kAxisLeft, kAxisFoot}, kThickPen);
}

void stroke(CardPen& pen, std::vector<Point> points, double width) {
    if (points.size() < 2) {
        return;
    }
    drawing::Stroke line;
    line.pieces = {{std::move(points), false}};
    line.width = width;
    line.join = drawing::Join::Round;
    line.cap = drawing::Cap::Round;
    drawing::Drawing ink;
    ink.marks.emplace_back(std::move(line));
    pen.append(ink);
}

/// What is known between two places; a gap parts it.
void drawGround(CardPen& pen, const Profile& profile, const Scales& scales, Metres from, Metres to, double width) {
    std::vector<Point> points;
    for (const movement::ProfileSpot& spot : profile.spots) {
        if (spot.ground < from || spot.ground > to) {
            continue;
        }
        if (!spot.height) {
            stroke(pen, std::move(points), width);
            points.clear();
            continue;
        }
        points.push_back({scales.x(spot.ground), scales.y(*spot.height)});
    }
    stroke(pen, std::move(points), width);
}

/// The slope stands under the ground, beside the middle of its part; where another one stands already, it is left out.
void drawSteep(CardPen& pen, const Profile& profile, const Scales& scales) {
    constexpr double kBeside = 2.2;
    std::vector<drawing::Box> taken;
    for (const movement::SteepPart& part : profile.steep) {
        drawGround(pen, profile, scales, part.from, part.to, kSteepPen);
        const Metres middle = (part.from + part.to) / 2;
        const auto spot = std::min_element(
            profile.spots.begin(), profile.spots.end(),
            [&](const auto& a, const auto& b) { return abs(a.ground - middle) < abs(b.ground - middle); });
        if (spot == profile.spots.end() || !spot->height) {
            continue;
        }
        const std::string text = fmt::format("{} %", numberText(std::abs(part.steepest) * 100, 0));
        const double width = widthOf(text, kAxis);
        const double left = scales.x(spot->ground) + (part.steepest > 0 ? kBeside : -kBeside - width);
        const double base = std::min(scales.y(*spot->height) + kAxis.capHeight * 1.5, kAxisFoot - 1);
        const drawing::Box box{left, base - kAxis.capHeight, left + width, base};
        if (std::none_of(taken.begin(), taken.end(), [&](const drawing::Box& other) { return box.meets(other); })) {
            pen.write(text, {left, base}, kAxis);
            taken.push_back(box.grown(0.5));
        }
    }
}

/// Labels over the picture in rows, so that none stands on another.
void drawMarks(CardPen& pen, const Profile& profile, const Scales& scales) {
    std::vector<double> ends(5, 0.0);
    for (const ProfileMark& mark : profile.marks) {
        const bool isPoint = mark.kind == ProfileMark::Kind::RoutePoint;
        const Hand hand = isPoint ? kPointLabel : kLineLabel;
        const std::string text = fitted(mark.label, 40, hand);
        const double width = widthOf(text, hand);
        const double x = scales.x(mark.ground);
        const double left = std::clamp(x - width / 2, kPageLeft, kPageRight - width);
        std::size_t row = 0;
        while (row + 1 < ends.size() && left < ends[row] + 1.2) {
            ++row;
        }
        const double base = scales.top - 3 - kLabelRow * static_cast<double>(row);
        if (left >= ends[row] + 1.2) {
            pen.write(text, {left, base}, hand);
            ends[row] = left + width;
        }
        const double foot = mark.height ? scales.y(*mark.height) : kAxisFoot;
        if (isPoint) {
            pen.line({x, base + 0.8}, {x, foot}, kThinPen);
            pen.dot({x, foot}, 1.4);
        } else {
            drawDashed(pen, {x, base + 0.8}, {x, foot}, drawing::kSmallOutline, kThinPen);
        }
    }
}

std::vector<CardFact> factsOf(const movement::RouteFigures& figures, const Profile& profile) {
    const auto metres = [](const std::optional<Metres>& length) {
        return length ? numberText(length->value(), 0) + " m" : said("unknown");
    };
    std::vector<CardFact> facts{
        {said("Climb"), said(profile.fromContours ? "%1, descent %2, from contours" : "%1, descent %2",
                             {metres(profile.climb), metres(profile.descent)})},
        {said("Heights"), said("%1 to %2", {metres(profile.lowest), metres(profile.highest)})}};
    if (figures.steepest) {
        facts.push_back({said("Steepest"), said(figures.steepest->slope < 0 ? "%1 % down, %2 m after the start"
                                                                            : "%1 % up, %2 m after the start",
                                                {numberText(std::abs(figures.steepest->slope) * 100, 0),
                                                 numberText(figures.steepest->along.value(), 0)})});
    }
    return facts;
}

}  // namespace

PaperPage profilePage(const plan::Plan& plan, const movement::RouteFigures& figures, const Profile& profile) {
    PaperHead head;
    head.title = movement::routeTitle(profile.route);
    head.purpose = said("%1, %2 m of ground",
                        {said(movement::useText(figures.use)), numberText(figures.groundDistance.value(), 0)});
    head.kind = said("PROFILE");
    head.marking = plan.heading().marking;
    head.left = {{said("Sheet"), sheetText(plan)}};
    head.right = factsOf(figures, profile);
    CardPen pen;
    const double top = drawHead(pen, head, 1, 1);
    const Scales scales = scalesOf(profile, top + kLabels);
    drawAxes(pen, scales);
    drawGround(pen, profile, scales, Metres(0), Metres(scales.length), kGroundPen);
    drawSteep(pen, profile, scales);
    drawMarks(pen, profile, scales);
    drawSource(pen, said(profile.fromContours
                             ? "Ground metres from the start to the right, heights in metres from contours read by "
                               "hand, even between them, drawn %1 times too high. Thick: %2 % and steeper, over steps "
                               "of 25 m or from contour to contour. Planning and training aid."
                             : "Ground metres from the start to the right, heights in metres by the elevation model, "
                               "drawn %1 times too high. Thick: %2 % and steeper, over steps of 25 m. Planning and "
                               "training aid.",
                         {numberText(scales.times(), 1), numberText(movement::kSteep * 100, 0)}));
    PaperPage page;
    page.drawing = std::move(pen).take();
    return page;
}

}  // namespace crosstick::press
