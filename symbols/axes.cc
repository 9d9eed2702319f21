#include "symbols/axes.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/measures/catalogue.h"
#include "symbols/arrows.h"
#include "symbols/construction.h"

namespace crosstick::symbols {
namespace {

/// Direction of the last stretch, over which a head lies.
Vector lastOf(const drawing::Path& path) {
    const double last = std::min(2.4, path.length());
    return path.chord(path.length() - last / 2, last);
}

void inkShaft(Desk& desk, Subject& subject, const Points& shaft) {
    const auto pieces = subject.manner.standing == Standing::Planned
                            ? drawing::dashed(drawing::Path(shaft), drawing::kPlanned, drawing::CornerRule::UsersLine)
                            : std::vector<drawing::Polyline>{{shaft, false}};
    desk.inkOf(subject).lines(pieces, desk.gauge().pen);
}

/// Length of an open head's arms, which stand 30 degrees off the shaft.
double headArms(const drawing::Path& path, const drawing::Gauge& gauge) {
    return std::clamp(path.length() / 1.5, 1.6, 0.6 * gauge.symbol);
}

void nameShaft(Desk& desk, Subject& subject, const drawing::Path& path) {
    const std::string words = wordsOf(*subject.measure);
    if (words.empty()) {
        return;
    }
    // Beside the shaft, or where that is shorter than the name beside the head.
    const double arms = headArms(path, desk.gauge());
    const double halfInk = desk.inkOf(subject).halfInk();
    const auto placesOf = [&](const Label& label) {
        return besidePlaces(path, label, halfInk + (path.length() < label.width() + 2 * arms ? arms / 2 : 0));
    };
    letterAt(desk, subject, wordings(words, desk.gauge().letters), placesOf,
             drawing::readable(path.chord(path.length() / 2, drawing::textWidth(words, desk.gauge().letters))));
}

/// A hollow arrow round a middle line: sides from the tail to the head's base, the head's outline.
struct HollowArrow {
    Points left, right;  ///< from the tail on
    Point tip, leftBarb, rightBarb;
    Vector u;
    double width;
};

/// Nothing where a line is too short for a hollow arrow of the least width.
/// @param halfInk  half of what a line's ink covers across
std::optional<HollowArrow> hollowArrow(const drawing::Path& path, double width, double halfInk) {
    constexpr double kLeast = 3.4;
    double b = width;
    if (path.length() < 1.3 * b + 4) {
        b = path.length() / 2.1;
    }
    if (b < kLeast) {
        return std::nullopt;
    }
    const double head = 1.3 * b;
    const double body = path.length() - head;
    HollowArrow arrow;
    arrow.width = b;
    arrow.u = drawing::unit(path.at(path.length()) - path.at(body));
    // The head's outer edges meet at the tip: their vertex stands back by the mitre of half the ink.
    arrow.tip = path.at(path.length()) - arrow.u * (halfInk / std::sin(std::atan2(b, head)));
    const Point base = path.at(body);
    const Vector n = drawing::leftOf(arrow.u);
    arrow.leftBarb = base + n * b;
    arrow.rightBarb = base - n * b;
    const Points middle = path.between(0, body);
    arrow.left = drawing::offset(middle, b / 2);
    arrow.right = drawing::offset(middle, -b / 2);
    // Both sides end on the head's base line, also where the line bends there.
    arrow.left.back() = base + n * (b / 2);
    arrow.right.back() = base - n * (b / 2);
    return arrow;
}

void inkHollow(Desk& desk, Subject& subject, const HollowArrow& arrow) {
    Pencil ink = desk.inkOf(subject);
    Points outline = arrow.left;
    outline.push_back(arrow.leftBarb);
    outline.push_back(arrow.tip);
    outline.push_back(arrow.rightBarb);
    outline.insert(outline.end(), arrow.right.rbegin(), arrow.right.rend());
    inkSign(ink, outline);
}

/// Along the middle line inside, where that is straight.
std::vector<Desk::Place> placesInside(const drawing::Path& path, const Label& inside, double width) {
    std::vector<Desk::Place> places;
    const double body = path.length() - 1.3 * width;
    if (width >= 3.4 && body > inside.width() + 2) {
        for (const double share : {0.5, 0.4, 0.6, 0.3, 0.7}) {
            const double s = body * share;
            if (path.turning(s - inside.width() / 2, s + inside.width() / 2) < 10 * std::numbers::pi / 180) {
                places.push_back({path.at(s), drawing::readable(path.chord(s, inside.width()))});
            }
        }
    }
    return places;
}

/// The longest of the wordings that stands inside along the middle line, else the shortest beside it.
/// @param words  the longest first
void nameHollow(Desk& desk, Subject& subject, const drawing::Path& path, double width,
                const std::vector<std::string>& words) {
    if (words.empty() || words.front().empty()) {
        return;
    }
    const double capital = std::clamp(width - 1.6, 1.8, desk.gauge().letters);
    std::vector<Label> all;
    for (const std::string& one : words) {
        all.push_back({{one}, capital});
    }
    const Label& shortest = all.back();
    const Degrees angle = drawing::readable(path.chord(path.length() / 2, shortest.width()));
    for (const Label& inside : all) {
        const auto place = subject.labelAt ? std::optional<Desk::Place>()
                                           : desk.choose(inside, placesInside(path, inside, width), subject.order);
        if (place) {
            desk.write(subject, inside, place->middle, place->angle);
            return;
        }
    }
    // Beside the body where it is as long as the name, else beside the head, which is wider.
    const double body = path.length() - 1.3 * width;
    const double halfWide = (body > shortest.width() ? width / 2 : width) + desk.inkOf(subject).halfInk();
    const double beside = body > shortest.width() ? body / 2 : path.length() / 2;
    const auto placesOf = [&](const Label& label) {
        return std::vector{besideAt(path, beside, label, halfWide, 1), besideAt(path, beside, label, halfWide, -1)};
    };
    letterAt(desk, subject, wordings(words.back(), capital), placesOf, angle);
}

/// "AVENUE OF APPROACH 3", which may be cut short to "AVENUE 3"; other arrows have one name.
std::vector<std::string> hollowWords(const plan::Measure& measure) {
    const std::string words = wordsOf(measure);
    const measures::Entry* entry = measures::find(measure.kind);
    if (entry == nullptr || entry->sign != measures::Sign::Avenue || words.empty()) {
        return {words};
    }
    const std::string rest = words.substr(std::min(entry->abbreviation.size(), words.size()));
    return {"AVENUE OF APPROACH" + rest, words};
}

double widthOf(const plan::Measure& measure) {
    return numberOf(measure, "width", 3.4, 12);
}

/// An axis of any width: hollow, or where it is too short a plain arrow with its name beside.
std::optional<HollowArrow> placeHollow(Desk& desk, Subject& subject) {
    const drawing::Path path(subject.points);
    auto arrow = hollowArrow(path, widthOf(*subject.measure), desk.inkOf(subject).halfInk());
    if (!arrow) {
        placeAttack(desk, subject);
        return std::nullopt;
    }
    inkHollow(desk, subject, *arrow);
    nameHollow(desk, subject, path, arrow->width, hollowWords(*subject.measure));
    return arrow;
}

}  // namespace

void placeAttack(Desk& desk, Subject& subject) {
    const drawing::Path path(subject.points);
    const Vector u = lastOf(path);
    const double arms = headArms(path, desk.gauge());
    Pencil ink = desk.inkOf(subject);
    const ShaftEnd end = openHead(ink, subject.points.back(), u, arms);
    inkShaft(desk, subject, cutBack(subject.points, end.at, u));
    nameShaft(desk, subject, path);
}

void placeMainAttack(Desk& desk, Subject& subject) {
    const drawing::Path path(subject.points);
    const Vector u = lastOf(path);
    Pencil ink = desk.inkOf(subject);
    const ShaftEnd end = outlinedHead(ink, subject.points.back(), u, path.length());
    inkShaft(desk, subject, cutBack(subject.points, end.at, u));
    nameShaft(desk, subject, path);
}

void placeMovement(Desk& desk, Subject& subject) {
    const drawing::Path path(subject.points);
    const Vector u = lastOf(path);
    Pencil ink = desk.inkOf(subject);
    const ShaftEnd end = filledHead(ink, subject.points.back(), u, path.length());
    if (path.length() > 2.4) {
        inkShaft(desk, subject, cutBack(subject.points, end.at, u));
    }
    nameShaft(desk, subject, path);
}

void placeFreeArrow(Desk& desk, Subject& subject) {
    const drawing::Path path(subject.points);
    const Vector u = lastOf(path);
    Pencil ink = desk.inkOf(subject);
    const ShaftEnd end = filledHead(ink, subject.points.back(), u, path.length());
    if (path.length() > 2.4) {
        ink.thin(cutBack(subject.points, end.at, u));
    }
    nameShaft(desk, subject, path);
}

void placeAxis(Desk& desk, Subject& subject) {
    (void)placeHollow(desk, subject);
}

void placeMainAxis(Desk& desk, Subject& subject) {
    if (const auto arrow = placeHollow(desk, subject)) {
        // A chevron inside the head, from side to side of the body.
        const Vector n = drawing::leftOf(arrow->u);
        const Point base = (arrow->leftBarb + arrow->rightBarb) * 0.5;
        Pencil ink = desk.inkOf(subject);
        const double half = arrow->width / 2 - ink.toStroke();  // to the body's near strokes
        // Parallel to the head's edges: as steep as they are.
        const Point apex = base + arrow->u * (half * 1.3);
        Pencil single = ink.single();
        inkSign(single, {base + n * half, apex, base - n * half});
    }
}

void placeAvenue(Desk& desk, Subject& subject) {
    (void)placeHollow(desk, subject);
}

void placeCorridor(Desk& desk, Subject& subject) {
    const drawing::Path path(subject.points);
    const double b = std::min(widthOf(*subject.measure), path.length());
    const double body = path.length() - b / 2;
    const Points middle = path.between(0, body);
    const Vector u = drawing::unit(path.at(path.length()) - path.at(body));
    const Vector n = drawing::leftOf(u);
    Pencil ink = desk.inkOf(subject);
    Points outline = drawing::offset(middle, b / 2);
    outline.back() = path.at(body) + n * (b / 2);
    outline.push_back(path.at(path.length()) - u * ((desk.gauge().thin() / 2 + ink.toStroke()) * std::numbers::sqrt2));
    Points right = drawing::offset(middle, -b / 2);
    right.back() = path.at(body) - n * (b / 2);
    outline.insert(outline.end(), right.rbegin(), right.rend());
    ink.lines(subject.manner.standing == Standing::Planned
                  ? drawing::dashed(drawing::Path(outline), drawing::kPlanned, drawing::CornerRule::Outline)
                  : std::vector<drawing::Polyline>{{outline, false}},
              desk.gauge().thin());
    nameHollow(desk, subject, path, b, hollowWords(*subject.measure));
}

void placeAmbush(Desk& desk, Subject& subject) {
    const Points& p = subject.points;
    const Point middle = (p[0] + p[1]) * 0.5;
    const Vector chord = p[1] - p[0];
    const double span = drawing::length(chord);
    Vector away = drawing::unit(drawing::leftOf(chord));
    if (drawing::dot(away, p[2] - middle) > 0) {
        away = away * -1;
    }
    // An arc through both ends that sags 0.22 of its chord: by a circle, in even steps.
    constexpr int kSteps = 24;
    const double sag = 0.22 * span;
    const double radius = sag > 0 ? (span * span / 4 + sag * sag) / (2 * sag) : 0;
    const Point centre = middle - away * (radius - sag);
    const Vector along = drawing::unit(chord);
    const double half = radius > 0 ? std::asin(std::min(1.0, span / 2 / radius)) : 0;
    Points arc;
    for (int n = 0; n <= kSteps; ++n) {
        const double turn = -half + 2 * half * n / kSteps;
        arc.push_back(centre + along * (radius * std::sin(turn)) + away * (radius * std::cos(turn)));
    }
    Pencil ink = desk.inkOf(subject);
    if (span > 0.05) {
        inkSign(ink, arc);
        const drawing::Path path(arc);
        std::vector<drawing::Polyline> ticks;
        for (int n = 0; n < 6; ++n) {
            const double s = path.length() * (n + 0.5) / 6;
            const Vector out = drawing::unit(path.at(s) - centre);
            ticks.push_back({{path.at(s) + out * ink.toStroke(), path.at(s) + out * 1.6}, false});
        }
        ink.single().lines(std::move(ticks), desk.gauge().pen);
    }
    const Point arcMiddle = span > 0.05 ? middle + away * sag : middle;
    const Point from = arcMiddle - away * ink.toStroke();
    if (const double far = drawing::length(p[2] - from); far >= 0.05) {
        const Vector u = drawing::unit(p[2] - from);
        const ShaftEnd end = openHead(ink, p[2], u, std::clamp(far / 1.5, 1.6, 0.5 * desk.gauge().symbol));
        if (drawing::dot(end.at - from, u) > 0) {
            inkSign(ink, {from, end.at});
        }
    }
    const Label label{{movement::label(*subject.measure)}, desk.gauge().letters};
    const Degrees angle = drawing::readable(along);
    std::vector<Desk::Place> places;
    for (const double far : {1.6 + 0.9 + label.height() / 2, 6.0, 9.0}) {
        places.push_back({arcMiddle + away * far, angle});
    }
    places.push_back({p[1] + along * (2 + label.width() / 2), angle});
    places.push_back({p[0] - along * (2 + label.width() / 2), angle});
    letterAt(desk, subject, label, places, angle);
}

}  // namespace crosstick::symbols
