#include "symbols/construction.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/measures/catalogue.h"
#include "core/units/number_text.h"
#include "symbols/extension.h"
#include "symbols/faults.h"

namespace crosstick::symbols {
namespace {

constexpr double kClear = 0.8;  ///< round a task's letter of the usual height
constexpr double kLeastPiece = 1.0;

std::string_view abbreviationOf(const plan::Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    return entry == nullptr || entry->wording == measures::Wording::Bare ? std::string_view{} : entry->abbreviation;
}

}  // namespace

void inkSign(Pencil& pencil, const Points& points) {
    pencil.lines(pencil.manner().standing == Standing::Planned
                     ? drawing::dashed(drawing::Path(points), drawing::kPlanned, drawing::CornerRule::Outline)
                     : std::vector<drawing::Polyline>{{points, false}},
                 pencil.gauge().pen);
}

void inkThinSign(Pencil& pencil, const drawing::Polyline& line) {
    pencil.lines(pencil.manner().standing == Standing::Planned
                     ? drawing::dashed(drawing::Path(line.points, line.closed), drawing::kPlanned,
                                       drawing::CornerRule::UsersLine)
                     : std::vector<drawing::Polyline>{line},
                 pencil.gauge().thin(), drawing::Join::Round);
}

void inkLettered(Desk& desk, Subject& subject, const Points& points, double s, const std::string& letter) {
    const drawing::Path path(points);
    const Label label{{letter}, desk.taskLetter()};
    const double clear = kClear * label.capital / kTaskLetter;
    if (!letter.empty() && desk.writeByHand(subject, label, Degrees(0))) {
        const TurnedBox box = label.boxAt(*subject.labelAt, Degrees(0));
        const auto gaps =
            gapsUnder(path, TurnedBox{desk.movedInside(box), box.width, box.height, box.angle}.grown(clear), 0);
        Pencil ink = desk.inkOf(subject);
        for (const drawing::Stretch& piece : drawing::without({{0, path.length()}}, gaps)) {
            inkSign(ink, path.between(piece.from, piece.to));
        }
        return;
    }
    const auto halfAt = [&](double at) {
        const Vector u = path.chord(at, 1);
        return std::abs(u.x) * label.width() / 2 + std::abs(u.y) * label.capital / 2 + clear;
    };
    if (const double room = halfAt(s); path.length() > 2 * room + kLeastPiece) {
        s = std::clamp(s, room, path.length() - room);  // a short first piece: the letter begins the line
    }
    const double half = halfAt(s);
    const TurnedBox box = label.boxAt(path.at(s), Degrees(0));
    Pencil ink = desk.inkOf(subject);
    if (letter.empty() || s - half < 0 || s + half > path.length() || !desk.fits(box)) {
        if (!letter.empty()) {
            desk.remark(subject, kLabelLeftOut);
        }
        inkSign(ink, points);
        return;
    }
    desk.write(subject, label, path.at(s), Degrees(0));
    for (const auto& [from, to] : {std::pair{0.0, s - half}, std::pair{s + half, path.length()}}) {
        if (to - from >= kLeastPiece) {  // less is a crumb beside the letter
            inkSign(ink, path.between(from, to));
        }
    }
}

std::vector<drawing::Stretch> gapsUnder(const drawing::Path& path, const TurnedBox& box, double clear) {
    const double turn = radians(box.angle).value();
    const Vector along{std::cos(turn), -std::sin(turn)};
    Points local;
    for (const Point p : path.points()) {
        local.push_back({drawing::dot(p - box.middle, along), drawing::cross(p - box.middle, along)});
    }
    const double half = box.width / 2 + clear;
    return drawing::inside(drawing::Path(std::move(local)), {-half, -box.height / 2, half, box.height / 2});
}

Degrees angleByHand(const drawing::Path& path, Point at) {
    constexpr double kBeside = 6;
    const double nearest = nearestOn(path, at);
    return drawing::length(path.at(nearest) - at) > kBeside ? Degrees(0) : drawing::readable(path.chord(nearest, 8));
}

double nearestOn(const drawing::Path& path, Point to) {
    const Points& p = path.points();
    double best = 0;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t n = 0; n + 1 < p.size(); ++n) {
        const Vector span = p[n + 1] - p[n];
        const double size = drawing::dot(span, span);
        const double share = size > 0 ? std::clamp(drawing::dot(to - p[n], span) / size, 0.0, 1.0) : 0;
        const double away = drawing::length(to - (p[n] + span * share));
        if (away < least) {
            least = away;
            best = path.position(n) + share * std::sqrt(size);
        }
    }
    return best;
}

std::vector<DashMiddle> dashMiddles(const drawing::Mark& line, const Manner& manner) {
    constexpr double kLeastDash = 1.2;
    constexpr double kStraight = 0.5;  // radians
    std::vector<DashMiddle> middles;
    const auto* stroke = std::get_if<drawing::Stroke>(&line);
    const std::size_t step = manner.doubled ? 2 : 1;
    for (std::size_t n = 0; stroke != nullptr && n + step <= stroke->pieces.size(); n += step) {
        const drawing::Path dash(stroke->pieces[n].points);
        const drawing::Path other(stroke->pieces[n + step - 1].points);
        const double length = dash.length();
        if (length >= kLeastDash && dash.turning(0, length) < kStraight) {
            middles.push_back({(dash.at(length / 2) + other.at(other.length() / 2)) * 0.5,
                               drawing::unit(dash.chord(length / 2, length))});
        }
    }
    return middles;
}

Points cutBack(Points shaft, Point end, Vector u) {
    while (shaft.size() > 1 && drawing::dot(shaft[shaft.size() - 2] - end, u) > 0) {
        shaft.pop_back();
    }
    shaft.back() = end;
    return shaft;
}

Desk::Place besideAt(const drawing::Path& path, double s, const Label& label, double halfInk, double side) {
    const double half = label.width() / 2 + 1;  // letters reach farther than the bent line under them
    const Vector u = path.chord(s, label.width());
    const Vector n = drawing::leftOf(u) * side;
    double bulge = 0;
    for (const Point p : path.between(std::max(0.0, s - half), std::min(path.length(), s + half))) {
        bulge = std::max(bulge, drawing::dot(p - path.at(s), n));
    }
    return {path.at(s) + n * (bulge + 0.9 + halfInk + label.height() / 2), drawing::readable(u)};
}

std::vector<Desk::Place> besidePlaces(const drawing::Path& path, const Label& label, double halfInk) {
    std::vector<Desk::Place> places;
    for (const double share : {0.5, 0.35, 0.65}) {
        for (const double side : {1.0, -1.0}) {
            places.push_back(besideAt(path, path.length() * share, label, halfInk, side));
        }
    }
    return places;
}

std::vector<Label> wordings(const std::string& words, double capital) {
    std::vector<Label> all{{{words}, capital}};
    std::optional<Label> best;
    for (auto blank = words.find(' '); blank != std::string::npos; blank = words.find(' ', blank + 1)) {
        const Label two{{words.substr(0, blank), words.substr(blank + 1)}, capital};
        best = !best || two.width() < best->width() ? two : best;
    }
    if (best) {
        all.push_back(*best);
    }
    return all;
}

void letterAt(Desk& desk, Subject& subject, const std::vector<Label>& wordings, const PlacesOf& placesOf,
              Degrees angle) {
    if (wordings.empty() || wordings.front().isEmpty() || desk.writeByHand(subject, wordings.front(), angle)) {
        return;
    }
    const auto beside = [&](Crossed crossed) {
        return std::any_of(wordings.begin(), wordings.end(), [&](const Label& label) {
            const auto place = desk.choose(label, placesOf(label), subject.order, crossed);
            if (place) {
                desk.write(subject, label, place->middle, place->angle);
            }
            return place.has_value();
        });
    };
    const auto aside = [&] {
        return std::any_of(wordings.begin(), wordings.end(),
                           [&](const Label& label) { return letterAsideOfBody(desk, subject, label); });
    };
    // A symbol's name goes aside before a line strikes it through; that of a line, long as it is, runs across others
    // rather than far from it.
    const bool isSymbols = subject.body.points.size() < 2;
    const bool isWritten =
        isSymbols ? beside(Crossed::Never) || aside() || beside(Crossed::AtWorst) : beside(Crossed::AtWorst) || aside();
    if (!isWritten) {
        desk.remark(subject, kLabelLeftOut);
    }
}

void letterAt(Desk& desk, Subject& subject, const Label& label, const std::vector<Desk::Place>& places, Degrees angle) {
    if (label.isEmpty() || label.rows.size() > 1) {
        letterAt(
            desk, subject, std::vector{label}, [&](const Label&) { return places; }, angle);
        return;
    }
    letterAt(
        desk, subject, wordings(label.rows.front(), label.capital),
        [&](const Label& wording) { return wording.rows.size() == 1 ? places : std::vector<Desk::Place>{}; }, angle);
}

std::string wordsOf(const plan::Measure& measure) {
    const std::string_view abbreviation = abbreviationOf(measure);
    std::string words(abbreviation);
    for (const std::string& part : {measure.number, bareName(measure.name, abbreviation)}) {
        if (!part.empty()) {
            words += words.empty() ? part : ' ' + part;
        }
    }
    return words;
}

std::string letterOf(const plan::Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    return entry == nullptr ? std::string{} : std::string(entry->abbreviation);
}

std::string fieldOf(const plan::Measure& measure, std::string_view key) {
    const auto found = measure.fields.find(std::string(key));
    return found == measure.fields.end() ? std::string{} : found->second;
}

double numberOf(const plan::Measure& measure, std::string_view key, double low, double high) {
    std::string_view standard;
    if (const measures::Entry* entry = measures::find(measure.kind)) {
        for (const measures::Field& field : entry->fields) {
            standard = field.key == key ? field.standard : standard;
        }
    }
    const std::string typed = fieldOf(measure, key);
    const auto own = parseNumber(typed);
    return std::clamp(own ? *own : parseNumber(standard).value_or(low), low, high);
}

bool isYes(const plan::Measure& measure, std::string_view key) {
    return fieldOf(measure, key) == "yes";
}

double enemySide(const plan::Measure& measure) {
    return fieldOf(measure, "enemy_side") == "right" ? -1 : 1;
}

}  // namespace crosstick::symbols
