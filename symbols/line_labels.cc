#include "symbols/line_labels.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/drawing/steps.h"
#include "core/measures/catalogue.h"
#include "symbols/construction.h"
#include "symbols/extension.h"
#include "symbols/faults.h"

namespace crosstick::symbols {
namespace {

constexpr double kBeyond = 1.0;    // end of the line to the letters
constexpr double kAbove = 0.9;     // letters to the ink beside them
constexpr double kGap = 1.0;       // letters to the line in a break
constexpr double kStub = 3.0;      // line left outside a break
constexpr double kShortest = 6.0;  // a shorter line's name stands aside
constexpr double kStraight = 20 * std::numbers::pi / 180;

/// One end of a visible stretch that is to be lettered.
struct LineEnd {
    double s;       ///< position of the end
    double inward;  ///< +1: the line goes on to larger positions
    bool isReal;    ///< the line ends here; else it leaves the window
};

Vector outward(const drawing::Path& path, const LineEnd& end, double over) {
    const Point here = path.at(end.s);
    const Point back = path.at(end.s + end.inward * over);
    return drawing::unit(here - back);
}

Vector upOf(Degrees angle) {
    const double turn = radians(angle).value();
    return {-std::sin(turn), -std::cos(turn)};
}

/// Places 1 to 3: on the axis beyond the end, above and below its last stretch, flush with the end or nearly.
std::vector<Desk::Place> placesAtEnd(const drawing::Path& path, const LineEnd& end, const Label& label, double reach) {
    std::vector<Desk::Place> places;
    const double width = label.width();
    const Point tip = path.at(end.s);
    if (end.isReal) {
        const Vector u = outward(path, end, std::max(8.0, width));
        const Degrees angle = drawing::readable(u);
        places.push_back({tip + u * (kBeyond + width / 2), angle});
        // Two rows on a steep axis: the block is wider across than along, so it is also tried level.
        const double across = std::abs(u.x) * width / 2 + std::abs(u.y) * label.height() / 2;
        places.push_back({tip + u * (kBeyond + across), Degrees(0)});
    }
    const Vector u = outward(path, end, width);
    const Degrees angle = drawing::readable(u);
    const Vector up = upOf(angle);
    const Point middle = tip - u * (width / 2);
    const double away = kAbove + reach + label.height() / 2;
    places.push_back({middle + up * away, angle});
    places.push_back({middle - up * away, angle});
    for (const double inward : {1.6, 3.2}) {  // where another line begins at this end, a little off it
        const double s = end.s + end.inward * (width / 2 + inward);
        if (s > width / 2 && s < path.length() - width / 2) {
            Desk::Place left = besideAt(path, s, label, reach, 1);
            Desk::Place right = besideAt(path, s, label, reach, -1);
            const bool isLeftAbove = drawing::dot(left.middle - right.middle, up) > 0;
            places.push_back(isLeftAbove ? left : right);
            places.push_back(isLeftAbove ? right : left);
        }
    }
    return places;
}

/// Place 4: in a break whose outer end lies 3.0 from the line's end.
struct Break {
    Desk::Place place;
    drawing::Stretch gap;
};

std::optional<Break> breakAt(Desk& desk, const Subject& subject, const drawing::Path& path, double from,
                             const Label& label) {
    const double room = label.width() + 2 * kGap;
    const drawing::Stretch gap{from, from + room};
    if (gap.from < 0 || gap.to > path.length() || path.turning(gap.from - 3, gap.to + 3) > kStraight) {
        return std::nullopt;
    }
    const Point a = path.at(gap.from);
    const Point b = path.at(gap.to);
    const Degrees angle = drawing::readable(b - a);
    const Desk::Place place{(a + b) * 0.5, angle};
    const TurnedBox box = label.boxAt(place.middle, angle);
    if (!desk.fits(box) || desk.isCrossed(box, subject.order)) {
        return std::nullopt;
    }
    return Break{place, gap};
}

/// Place 4, looked for from the end inwards, up to a third of the line away: farther it would not be the end's name.
std::optional<Break> findBreak(Desk& desk, const Subject& subject, const drawing::Path& path, const LineEnd& end,
                               const drawing::Stretch& stretch, const Label& label) {
    constexpr double kFarthest = 16;
    const double room = label.width() + 2 * kGap;
    if (stretch.length() < 2 * label.width() + 20) {
        return std::nullopt;
    }
    for (const double aside : drawing::steps(kStub, std::min(stretch.length() / 3, kFarthest), 1)) {
        const double from = end.inward > 0 ? end.s + aside : end.s - aside - room;
        if (auto found = breakAt(desk, subject, path, from, label)) {
            return found;
        }
    }
    return std::nullopt;
}

/// Place 5: aside, with an extension line that ends in a tick on the line.
bool asideOf(Desk& desk, Subject& subject, const drawing::Path& path, const LineEnd& end, const Label& label) {
    const Point spot = path.at(end.s + end.inward * std::min(2.0, path.length() / 2));
    return letterAside(desk, subject, label, spot, ExtensionEnd::Tick);
}

/// Letters written, and the gap that the line is to have for them.
struct Written {
    std::optional<drawing::Stretch> gap = {};
};

/// One wording at one end where it is crossed by nothing: beside the end of a line that ends here, else in a break. A
/// line that goes on outside is broken, so that its stub shows that it does.
std::optional<Written> letterFreely(Desk& desk, Subject& subject, const drawing::Path& path, const LineEnd& end,
                                    const drawing::Stretch& stretch, const Label& label, double reach) {
    if (end.isReal) {
        for (const Desk::Place& place : placesAtEnd(path, end, label, reach)) {
            const TurnedBox box = label.boxAt(place.middle, place.angle);
            if (desk.fits(box) && !desk.isCrossed(box, subject.order)) {
                desk.write(subject, label, place.middle, place.angle);
                return Written{};
            }
        }
    }
    if (const auto found = findBreak(desk, subject, path, end, stretch, label)) {
        desk.write(subject, label, found->place.middle, found->place.angle);
        return Written{found->gap};
    }
    return std::nullopt;
}

/// Letters one end; gives the gap the line is to have for it.
std::optional<drawing::Stretch> letterEnd(Desk& desk, Subject& subject, const drawing::Path& path, const LineEnd& end,
                                          const drawing::Stretch& stretch, const std::vector<Label>& wordings,
                                          double reach) {
    const auto aside = [&] {
        return std::any_of(wordings.begin(), wordings.end(),
                           [&](const Label& label) { return asideOf(desk, subject, path, end, label); });
    };
    if (path.length() < kShortest && aside()) {
        return std::nullopt;
    }
    for (const Label& label : wordings) {
        if (const auto written = letterFreely(desk, subject, path, end, stretch, label, reach)) {
            return written->gap;
        }
    }
    for (const Label& label : wordings) {
        if (const auto place = desk.choose(label, placesAtEnd(path, end, label, reach), subject.order)) {
            desk.write(subject, label, place->middle, place->angle);
            return std::nullopt;
        }
    }
    if (!aside()) {
        desk.remark(subject, kLabelLeftOut);
    }
    return std::nullopt;
}

/// A name in as many rows as it has, in one, in two: "LD" over "(PL FLINT)", "LD (PL FLINT)".
std::vector<Label> lineWordings(const std::vector<std::string>& rows, double letters) {
    if (rows.size() < 2) {
        return wordings(rows.front(), letters);
    }
    return {{rows, letters}, {{rows[0] + ' ' + rows[1]}, letters}};
}

std::vector<LineEnd> endsToLetter(const Desk& desk, const drawing::Path& path, const drawing::Stretch& stretch,
                                  const Label& label) {
    const bool startsHere = stretch.from <= 1e-6;
    const bool endsHere = stretch.to >= path.length() - 1e-6;
    const LineEnd first{stretch.from, 1, startsHere};
    const LineEnd last{stretch.to, -1, endsHere};
    const bool whole = startsHere && endsHere;
    if ((whole && stretch.length() >= 2 * label.width() + 8) || (!whole && stretch.length() >= 60)) {
        return {first, last};
    }
    if (!whole && stretch.length() < 25) {
        return {};
    }
    const double right = desk.window().right;
    const bool firstIsNearer = std::abs(right - path.at(first.s).x) < std::abs(right - path.at(last.s).x);
    return {firstIsNearer ? first : last};
}

}  // namespace

Points fromTheWest(Points points) {
    const Point a = points.front();
    const Point b = points.back();
    if (std::abs(a.x - b.x) > 1e-6 ? b.x < a.x : b.y > a.y) {
        std::reverse(points.begin(), points.end());
    }
    return points;
}

std::vector<std::string> lineRows(const plan::Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    if (entry == nullptr || entry->wording != measures::Wording::OverPhaseLine) {
        const std::string words = wordsOf(measure);
        return words.empty() ? std::vector<std::string>{} : std::vector{words};
    }
    const std::string abbreviation(entry->abbreviation);
    const std::string name = bareName(bareName(measure.name, abbreviation), "PL");
    return name.empty() ? std::vector{abbreviation} : std::vector{abbreviation, "(PL " + name + ")"};
}

std::vector<drawing::Stretch> letterEnds(Desk& desk, Subject& subject, const drawing::Path& path,
                                         const std::vector<std::string>& rows, double reach) {
    if (rows.empty()) {
        return {};
    }
    const Label label{rows, desk.gauge().letters};
    const std::vector<Label> wordings = lineWordings(rows, desk.gauge().letters);
    if (subject.labelAt) {
        const Degrees angle = angleByHand(path, *subject.labelAt);
        const TurnedBox box = label.boxAt(*subject.labelAt, angle);
        (void)desk.writeByHand(subject, label, angle);
        return gapsUnder(path, {desk.movedInside(box), box.width, box.height, angle}, kGap);
    }
    std::vector<drawing::Stretch> gaps;
    for (const drawing::Stretch& stretch : drawing::inside(path, desk.window())) {
        for (const LineEnd& end : endsToLetter(desk, path, stretch, label)) {
            if (const auto gap = letterEnd(desk, subject, path, end, stretch, wordings, reach)) {
                gaps.push_back(*gap);
            }
        }
    }
    return gaps;
}

std::vector<SeenStretch> seenStretches(const drawing::Path& path, const drawing::Box& window) {
    constexpr double kRepeat = 120;
    std::vector<SeenStretch> seen;
    for (const drawing::Stretch& stretch : drawing::inside(path, window)) {
        const int count = std::max(1, static_cast<int>(std::lround(stretch.length() / kRepeat)));
        const double part = stretch.length() / count;
        seen.push_back({stretch, {}});
        for (int n = 0; n < count; ++n) {
            seen.back().shares.push_back({stretch.from + part * n, stretch.from + part * (n + 1)});
        }
    }
    return seen;
}

std::size_t stretchOfHand(const std::vector<SeenStretch>& seen, const drawing::Path& path, Point hand) {
    const double s = nearestOn(path, hand);
    const auto away = [s](const SeenStretch& one) { return std::max({0.0, one.whole.from - s, s - one.whole.to}); };
    const auto nearest =
        std::min_element(seen.begin(), seen.end(), [&](const auto& a, const auto& b) { return away(a) < away(b); });
    return static_cast<std::size_t>(nearest - seen.begin());
}

void placeNamedLine(Desk& desk, Subject& subject) {
    const drawing::Path path(fromTheWest(subject.points));
    const double reach = desk.inkOf(subject).halfInk();
    drawLine(desk, subject, path, letterEnds(desk, subject, path, lineRows(*subject.measure), reach));
}

}  // namespace crosstick::symbols
