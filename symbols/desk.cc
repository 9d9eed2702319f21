#include "symbols/desk.h"

#include "symbols/extension.h"

namespace crosstick::symbols {
namespace {

constexpr drawing::Box kNoWindow{-20000, -20000, 20000, 20000};  // 20 m of film

TurnedBox upright(const drawing::Box& box) {
    return {box.middle(), box.width(), box.height(), Degrees(0)};
}

}  // namespace

Desk::Desk(const Engraving& engraving)
    : engraving_(engraving), window_(engraving.frame.window().isEmpty() ? kNoWindow : engraving.frame.window()) {
    for (const drawing::Box& box : engraving.reserved) {
        taken_.take(upright(box));
    }
}

Pencil Desk::plainInkOf(Subject& subject) {
    Manner plain = subject.manner;
    plain.doubled = false;
    return {subject.ink, plain, gauge()};
}

bool Desk::isCrossed(const TurnedBox& box, std::size_t owner) const {
    constexpr double kFromSpots = 0.8;
    constexpr Point kNowhere{-1e9, -1e9};  // a label has no true place of its own
    return taken_.crossings(withWhite(box), owner) > 0 || taken_.coversSpot(box, kNowhere, owner, kFromSpots);
}

void Desk::write(Subject& subject, const Label& label, Point middle, Degrees angle) {
    lettersOf(subject).letters(label, middle, angle);
    take(subject, label.boxAt(middle, angle), Part::What::Letters);
}

void Desk::take(Subject& subject, const TurnedBox& box, Part::What what) {
    taken_.take(box);
    subject.parts.push_back({box, what});
}

Point Desk::movedInside(const TurnedBox& box) const {
    const drawing::Box most = lettersWindow();
    const drawing::Box now = box.bounds();
    const auto push = [](double low, double high, double least, double greatest) {
        return low < least ? least - low : high > greatest ? greatest - high : 0;
    };
    return box.middle +
           Vector{push(now.left, now.right, most.left, most.right), push(now.top, now.bottom, most.top, most.bottom)};
}

bool Desk::writeByHand(Subject& subject, const Label& label, Degrees angle) {
    if (subject.labelAt) {
        const Point middle = movedInside(label.boxAt(*subject.labelAt, angle));
        write(subject, label, middle, angle);
        tieLabel(*this, subject, subject.body, label.boxAt(middle, angle));
    }
    return subject.labelAt.has_value();
}

std::optional<Desk::Place> Desk::choose(const Label& label, const std::vector<Place>& places, std::size_t owner,
                                        Crossed crossed) const {
    std::optional<Place> free;
    for (const Place& place : places) {
        const TurnedBox box = label.boxAt(place.middle, place.angle);
        if (!fits(box)) {
            continue;
        }
        if (!isCrossed(box, owner)) {
            return place;
        }
        if (!free && crossed == Crossed::AtWorst) {
            free = place;
        }
    }
    return free;
}

Points Desk::onFilm(const std::vector<geodesy::PlanePoint>& points) const {
    Points film;
    film.reserve(points.size());
    for (const geodesy::PlanePoint p : points) {
        film.push_back(engraving_.frame.onFilm(p));
    }
    return film;
}

void drawLine(Desk& desk, Subject& subject, const drawing::Path& path, const std::vector<drawing::Stretch>& gaps) {
    std::vector<drawing::Polyline> ink;
    for (const drawing::Stretch& piece : drawing::without({{0, path.length()}}, gaps)) {
        const Points points = path.between(piece.from, piece.to);
        const auto parts =
            subject.manner.standing == Standing::Planned
                ? drawing::dashed(drawing::Path(points), drawing::kPlanned, drawing::CornerRule::UsersLine)
                : std::vector<drawing::Polyline>{{points, false}};
        for (const drawing::Polyline& part : parts) {
            for (drawing::Polyline& visible : drawing::clipped(part, desk.window())) {
                ink.push_back(std::move(visible));
            }
        }
    }
    desk.inkOf(subject).lines(std::move(ink), desk.gauge().pen);
}

}  // namespace crosstick::symbols
