#include "symbols/words.h"

#include "core/drawing/steps.h"
#include "core/measures/catalogue.h"
#include "core/units/capitals.h"
#include "symbols/construction.h"
#include "symbols/extension.h"
#include "symbols/faults.h"
#include "symbols/point_symbol.h"

namespace crosstick::symbols {
namespace {

/// "SEIZE OBJ PINE": the task's name in capitals, then what was entered; of a task in words what was entered alone.
std::string taskWords(const plan::Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    const bool isNamed = entry != nullptr && measure.kind != "task-other";
    std::string words = inCapitals(isNamed ? entry->name : std::string_view{});
    for (const std::string& part : {measure.number, measure.name}) {
        if (!part.empty()) {
            words += words.empty() ? part : ' ' + part;
        }
    }
    return words.empty() ? std::string("TASK") : words;
}

/// Where a task in words is looked for, in the order of liking.
std::vector<Vector> wordsWays() {
    return {{1, -0.6}, {-1, -0.6}, {1, 0.6}, {-1, 0.6}, {0.4, -1}, {-0.4, -1}, {0.4, 1}, {-0.4, 1}};
}

}  // namespace

void placeWords(Desk& desk, Subject& subject) {
    if (!isSeen(desk, subject)) {
        return;
    }
    const Label label{{subject.measure->name}, desk.gauge().letters};
    if (subject.measure->name.empty() || desk.writeByHand(subject, label, Degrees(0))) {
        return;
    }
    // Begun at their spot; else a row up or down, else ended there; where a line runs through the spot, a little off
    // it; else aside.
    constexpr double kClearOfLine = 1.2;
    const Point spot = subject.points.front();
    const double half = label.width() / 2;
    std::vector<Desk::Place> places;
    for (const double off : {0.0, kClearOfLine, 2 * kClearOfLine}) {
        for (const double side : {half + off, -half - off}) {
            for (const double down : {0.0, -label.pitch(), label.pitch()}) {
                places.push_back({spot + Vector{side, down}, Degrees(0)});
            }
        }
    }
    if (const auto place = desk.choose(label, places, subject.order)) {
        desk.write(subject, label, place->middle, place->angle);
    } else if (!letterAside(desk, subject, label, spot, ExtensionEnd::Dot)) {
        desk.remark(subject, kLabelLeftOut);
    }
}

void placeBoxedWords(Desk& desk, Subject& subject) {
    constexpr double kPadding = 2.0;
    if (!isSeen(desk, subject) || subject.measure->name.empty()) {
        return;
    }
    const Label label{{subject.measure->name}, desk.gauge().letters};
    const Point spot = subject.labelAt.value_or(subject.points.front());
    const double wide = label.width() + 2 * kPadding;
    const double high = label.height() + 2 * kPadding;
    std::optional<Point> middle;
    if (subject.labelAt) {
        middle = desk.movedInside({spot, wide, high, Degrees(0)});
    }
    for (const double side : {wide / 2, -wide / 2}) {
        for (const double down : drawing::steps(0, 4 * high, high / 2)) {
            for (const double way : {down, -down}) {
                const Point at = spot + Vector{side, way};
                if (!middle && desk.fits({at, wide, high, Degrees(0)})) {
                    middle = at;
                }
            }
        }
    }
    if (!middle) {
        desk.remark(subject, kLabelLeftOut);
        return;
    }
    const drawing::Box frame{middle->x - wide / 2, middle->y - high / 2, middle->x + wide / 2, middle->y + high / 2};
    desk.inkOf(subject).lines(
        {{{{frame.left, frame.top}, {frame.right, frame.top}, {frame.right, frame.bottom}, {frame.left, frame.bottom}},
          true}},
        desk.gauge().thin());
    desk.lettersOf(subject).letters(label, *middle, Degrees(0));
    desk.take(subject, {*middle, wide, high, Degrees(0)}, Part::What::Letters);
}

void taskInWords(Desk& desk, Subject& subject, Point spot) {
    constexpr double kRuleBelow = 1.7;
    constexpr double kOver = 0.5;
    const Label label{{taskWords(*subject.measure)}, desk.gauge().letters};
    const double half = label.width() / 2 + kOver;
    const double high = label.height() + kRuleBelow;
    const auto blockAt = [&](Point middle) {  // of letters and rule
        return TurnedBox{middle + Vector{0, kRuleBelow / 2}, 2 * half, high, Degrees(0)};
    };
    std::optional<Point> middle;
    if (const auto byHand = subject.symbolAt ? subject.symbolAt : subject.labelAt) {
        middle = *byHand + (desk.movedInside(blockAt(*byHand)) - blockAt(*byHand).middle);
    }
    struct Pass {
        int crossed;
        Ties ties;
    };
    for (const Pass pass :
         {Pass{0, Ties::Clear}, Pass{99, Ties::Clear}, Pass{99, Ties::OverTies}, Pass{99, Ties::Anyhow}}) {
        for (const double away : drawing::steps(6, 26, 2)) {
            for (const Vector way : pass.crossed == 0 ? wordsWays() : allRound()) {
                const Point at = spot + way * away + Vector{way.x > 0 ? half : -half, 0};
                const double end = way.x > 0 ? -half : half;
                if (!middle && desk.fits(blockAt(at)) &&
                    desk.taken().crossings(blockAt(at).grown(0.3), subject.order) <= pass.crossed &&
                    mayExtend(desk, {at + Vector{end, kRuleBelow}, spot}, pass.ties)) {
                    middle = at;
                }
            }
        }
    }
    if (!middle) {
        desk.remark(subject, kLabelLeftOut);
        return;
    }
    Pencil ink = desk.plainInkOf(subject);
    const Point left = *middle + Vector{-half, kRuleBelow};
    const Point right = *middle + Vector{half, kRuleBelow};
    ink.thin({left, right});
    const Point end = drawing::length(left - spot) < drawing::length(right - spot) ? left : right;
    extensionLine(desk, subject, end, spot, ExtensionEnd::Dot);
    subject.isAside = true;
    desk.lettersOf(subject).letters(label, *middle, Degrees(0));
    subject.handle = middle;
    desk.take(subject, blockAt(*middle));
}

void placeTaskInWords(Desk& desk, Subject& subject) {
    if (isSeen(desk, subject)) {
        taskInWords(desk, subject, subject.points.front());
    }
}

void placeUnknown(Desk& desk, Subject& subject) {
    desk.remark(subject, kUnknownKind);
    std::vector<drawing::Polyline> ink;
    for (drawing::Polyline& part : drawing::clipped({subject.points, false}, desk.window())) {
        ink.push_back(std::move(part));
    }
    desk.inkOf(subject).lines(std::move(ink), desk.gauge().thin());
    const Point p = subject.points.front();
    nameBeside(desk, subject, movement::label(*subject.measure), drawing::Box{p.x, p.y, p.x, p.y}.grown(0.4));
}

}  // namespace crosstick::symbols
