#include "core/film/furniture.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/text_ruler.h"
#include "core/film/grid_names.h"
#include "core/film/lettering.h"
#include "core/movement/paper_figures.h"
#include "core/units/number_text.h"

namespace crosstick::film {
namespace {

using drawing::Box;
using drawing::Point;
using drawing::Polyline;
using drawing::Weight;

constexpr double kBar = 100;
constexpr double kShortMark = 1.2;
constexpr double kLongMark = 2.5;
constexpr double kEndRoom = 0.2;  ///< half a pen and a little at the ends of a bar

double markAt(int millimetres) {
    return millimetres % 50 == 0 ? kLongMark : kShortMark;
}

/// Brings a drawing's upper left corner to 0, 0.
Piece fitted(drawing::Drawing drawing) {
    const Box box = drawing::extent(drawing);
    return {drawing::moved(std::move(drawing), {-box.left, -box.top}), box.width(), box.height(), {}};
}

constexpr double kNorthLong = 20;
constexpr double kNotchWide = 2.5;
constexpr double kNotchFive = 8;
constexpr double kNotchHigh = 4;
constexpr double kNotchGap = 2.5;
constexpr double kArm = 5;
constexpr double kTickAir = 2;  ///< with the arms the 7 mm that nothing else may enter
constexpr double kTickPitch = 2.7;
constexpr double kAngleArm = 4;

}  // namespace

Piece levelBar(const Speech& say) {
    Piece piece;
    const double left = kEndRoom;
    std::vector<Polyline> pieces{{{{left, kLongMark}, {left + kBar, kLongMark}}, false}};
    for (int mm = 0; mm <= 100; mm += 10) {
        pieces.push_back({{{left + mm, kLongMark - markAt(mm)}, {left + mm, kLongMark}}, false});
    }
    piece.drawing.marks.emplace_back(lines(std::move(pieces)));
    const double base = kLongMark + 0.9 + kSmallLetters;
    piece.drawing.marks.emplace_back(row("0", {0, base}, kSmallLetters));
    piece.drawing.marks.emplace_back(row("50", {left + kBar / 2, base}, kSmallLetters, Align::Middle));
    piece.drawing.marks.emplace_back(
        row(say("100 mm, true", {}), {2 * left + kBar, base}, kSmallLetters, Align::Right));
    piece.width = kBar + 2 * kEndRoom;
    piece.height = base;
    piece.bar = {{left, kLongMark}, {left + kBar, kLongMark}};
    return piece;
}

Piece uprightBar(const Speech& say) {
    Piece piece;
    const double x = kSmallLetters + 0.9;
    const double foot = kEndRoom + kBar;
    std::vector<Polyline> pieces{{{{x, foot}, {x, foot - kBar}}, false}};
    for (int mm = 0; mm <= 100; mm += 10) {
        pieces.push_back({{{x, foot - mm}, {x + markAt(mm), foot - mm}}, false});
    }
    piece.drawing.marks.emplace_back(lines(std::move(pieces)));
    const auto upward = [&](const std::string& text, double along, double shift) {
        drawing::Text letters = row(text, {kSmallLetters, 0}, kSmallLetters);
        letters.start.y = along + shift * drawing::textWidth(text, kSmallLetters);
        letters.angle = Degrees(90);
        piece.drawing.marks.emplace_back(std::move(letters));
    };
    upward("0", foot + kEndRoom, 0);
    upward("50", foot - kBar / 2, 0.5);
    upward(say("100 mm, true", {}), 0, 1);
    piece.width = x + kLongMark;
    piece.height = kBar + 2 * kEndRoom;
    piece.bar = {{x, foot}, {x, foot - kBar}};
    return piece;
}

Piece northMark(const movement::GmAngle& gm, geodesy::AngleUnit unit, const Speech& say) {
    const double turn = radians(gm.angle).value();
    const drawing::Vector along{std::sin(turn), -std::cos(turn)};
    const drawing::Vector aside{std::cos(turn), std::sin(turn)};
    const double side = gm.angle.value() < 0 ? -1 : 1;  // magnetic north lies on this side of grid north
    const Point tip = along * kNorthLong;
    drawing::Drawing drawing;
    drawing.marks.emplace_back(
        lines({{{{0, 0}, {0, -kNorthLong}}, false}, {{{0, 0}, tip, tip - along * 2.4 + aside * (side * 0.9)}, false}}));
    // The letters stand beyond the tips, apart from each other however small the angle is.
    constexpr double kApart = 1.6;
    const double mWide = drawing::textWidth("M", kSmallLetters);
    const double gnWide = drawing::textWidth("GN", kSmallLetters);
    const double up = kNorthLong + 1.2;
    const Point beyond = along * up;
    const double nearest = (gnWide + mWide) / 2 + kApart;
    const double mMiddle = side * std::max(side * beyond.x, nearest);
    const double mBase = std::abs(gm.angle.value()) < 25 ? -up : beyond.y;
    drawing.marks.emplace_back(row("GN", {0, -up}, kSmallLetters, Align::Middle));
    drawing.marks.emplace_back(row("M", {mMiddle, mBase}, kSmallLetters, Align::Middle));
    const std::string year = numberText(static_cast<double>(static_cast<int>(gm.date.year())), 0);
    const bool printed = gm.source == plan::DeclinationSource::Sheet;
    drawing.marks.emplace_back(
        row(say("G-M %1", {movement::gmAngleText(gm.angle, unit)}), {0, 3.6}, kSmallLetters, Align::Middle));
    drawing.marks.emplace_back(
        row(say(printed ? "%1, from the sheet" : "%1, WMM2025", {year}), {0, 6.4}, kSmallLetters, Align::Middle));
    return fitted(std::move(drawing));
}

Piece notches(std::size_t number, std::size_t count, const Speech& say) {
    drawing::Drawing drawing;
    double right = 0;
    const auto cut = [&](double width) {
        drawing.marks.emplace_back(drawing::Fill{
            {{{right - width, 0}, {right, 0}, {right, kNotchHigh}, {right - width, kNotchHigh}}}, drawing::Ink::Black});
        right -= width + kNotchGap;
    };
    for (std::size_t left = number; left > 0;) {
        const bool five = left >= 5;
        cut(five ? kNotchFive : kNotchWide);
        left -= five ? 5 : 1;
    }
    drawing.marks.emplace_back(row(say("film %1 of %2", {std::to_string(number), std::to_string(count)}),
                                   {right, kNotchHigh / 2 + kLetters / 2}, kLetters, Align::Right));
    Piece piece = fitted(std::move(drawing));
    piece.height = kNotchHigh;
    return piece;
}

Piece marking(const std::string& text) {
    constexpr double kHeight = 3.0;
    Piece piece;
    piece.width = drawing::textWidth(text, kHeight, Weight::Bold);
    piece.height = 1.25 * kHeight;  // with what reaches below the base line
    if (!text.empty()) {
        piece.drawing.marks.emplace_back(row(text, {0, kHeight}, kHeight, Align::Left, Weight::Bold));
    }
    return piece;
}

TickDrawing tick(geodesy::PlanePoint at, drawing::Vector inward, TickLabel label) {
    const bool full = label == TickLabel::Full;
    const std::string upper = full ? numberText(at.easting.value(), 0) + "mE" : lineFigures(at.easting);
    const std::string lower = full ? numberText(at.northing.value(), 0) + "mN" : lineFigures(at.northing);
    const double x = inward.x * 1.4;
    const double lowBase = inward.y < 0 ? -1.1 : 1.1 + kSmallLetters + kTickPitch;
    const Align align = inward.x < 0 ? Align::Right : Align::Left;
    TickDrawing out;
    drawing::Drawing letters;
    letters.marks.emplace_back(row(upper, {x, lowBase - kTickPitch}, kSmallLetters, align));
    letters.marks.emplace_back(row(lower, {x, lowBase}, kSmallLetters, align));
    out.drawing.marks.emplace_back(lines({{{{-kArm, 0}, {kArm, 0}}, false}, {{{0, -kArm}, {0, kArm}}, false}}));
    out.label = drawing::extent(letters).grown(0.6);
    out.box = Box{0, 0, 0, 0}.grown(kArm + kTickAir).joined(out.label);
    out.drawing.append(letters);
    return out;
}

SquareMarks squareMarks(const Box& square, const std::string& name, PaperMm side) {
    const auto angle = [](Point corner, double right, double down) {
        return Polyline{{{corner.x + right * kAngleArm, corner.y}, corner, {corner.x, corner.y + down * kAngleArm}},
                        false};
    };
    SquareMarks marks;
    std::vector<Polyline> angles{angle({square.left, square.bottom}, 1, -1),
                                 angle({square.right, square.bottom}, -1, -1), angle({square.left, square.top}, 1, 1),
                                 angle({square.right, square.top}, -1, 1)};
    for (const Polyline& one : angles) {
        const auto& p = one.points;
        marks.boxes.push_back(
            Box{std::min(p[0].x, p[1].x), std::min(p[1].y, p[2].y), std::max(p[0].x, p[1].x), std::max(p[1].y, p[2].y)}
                .grown(0.8));
    }
    marks.drawing.marks.emplace_back(lines(std::move(angles)));
    drawing::Drawing letters;
    const Point at{square.left + 1.4, square.bottom - 1.4};
    letters.marks.emplace_back(row(name, {at.x, at.y - kTickPitch}, kSmallLetters));
    letters.marks.emplace_back(row(numberText(side.value(), 1) + " mm", at, kSmallLetters));
    marks.boxes.push_back(drawing::extent(letters).grown(0.6));
    marks.drawing.append(letters);
    return marks;
}

drawing::Drawing windowFrame(const Box& window, const plan::Registration& registration) {
    const auto corner = [](Metres easting, Metres northing) {
        return numberText(easting.value(), 0) + ' ' + numberText(northing.value(), 0);
    };
    const auto& low = registration.southWest;
    const auto& high = registration.northEast;
    const double above = window.top - 1.1;
    const double below = window.bottom + 1.1 + kSmallLetters;
    drawing::Drawing drawing;
    drawing.marks.emplace_back(lines({outline(window)}));
    drawing.marks.emplace_back(row(corner(low.easting, high.northing), {window.left, above}, kSmallLetters));
    drawing.marks.emplace_back(
        row(corner(high.easting, high.northing), {window.right, above}, kSmallLetters, Align::Right));
    drawing.marks.emplace_back(row(corner(low.easting, low.northing), {window.left, below}, kSmallLetters));
    drawing.marks.emplace_back(
        row(corner(high.easting, low.northing), {window.right, below}, kSmallLetters, Align::Right));
    return drawing;
}

}  // namespace crosstick::film
