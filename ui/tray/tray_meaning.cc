// What a typed line means, in one line.
#include "core/plan/numbering.h"
#include "ui/details/grid_entry.h"
#include "ui/details/number_entry.h"
#include "ui/tools/place_tool.h"
#include "ui/tray/tray.h"

namespace crosstick::tray {
namespace {

QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

}  // namespace

QString Tray::film() const {
    const plan::FilmPtr film = work_.workingFilm() ? work_.plan().film(*work_.workingFilm()) : nullptr;
    return film ? text(film->name) : QString();
}

/// Figures alone stand in the square nearest to the last point, or to the middle of the table.
Result<std::vector<geodesy::PlanePoint>> Tray::placesTyped() const {
    std::vector<geodesy::PlanePoint> places;
    if (work_.grid() == nullptr) {
        return places;
    }
    geodesy::PlanePoint near = table_.middleInPlan().value_or(geodesy::PlanePoint{});
    if (const tools::Wet wet = table_.wet(); pointsSet() > 0 && wet.line.size() > 1) {
        near = wet.line[wet.line.size() - 2];
    }
    for (const std::string& typed : line_.places) {
        auto place = details::gridEntered(typed, work_.plan(), *work_.grid(), near);
        if (!place) {
            return tl::unexpected(place.error());
        }
        near = *place;
        places.push_back(*place);
    }
    return places;
}

std::optional<Error> Tray::numberFault(const measures::Meant& meant) const {
    return details::numberFault(work_.plan(), meant.entry->kind, plan::numberSaid(meant));
}

Tray::Meaning Tray::meaningOf() const {
    if (work_.plan().films().empty() || !work_.workingFilm()) {
        return {tr("There is no film to draw on. Edit, New film makes one."), false, true};
    }
    auto places = placesTyped();
    if (!places) {
        return {say_(places.error()), false, true};
    }
    if (!line_.unfinished.empty()) {
        return {tr("%1 is no whole grid yet: at least three figures each way.").arg(text(line_.unfinished))};
    }
    if (isOthersTool() && (line_.words.empty() || table_.isBusy())) {
        return meaningForOthers(std::move(*places));
    }
    const auto meant = taken();
    if (isDrawingAnother()) {
        return {
            tr("%1 is being drawn. Without more words Enter ends it, Esc gives it up.").arg(text(table_.wet().what)),
            false, true};
    }
    if (line_.words.empty() && !places->empty()) {
        return {tr("shows this place."), true, false, std::move(*places)};
    }
    if (line_.words.empty() && !raised_) {
        return {tr("An abbreviation or part of a name, then its grid.")};
    }
    if (!meant) {
        return {tr("Nothing is called so. F2 shows every measure."), false, true};
    }
    if (const auto fault = numberFault(*meant)) {
        return {say_(*fault), false, true};
    }
    const QString what = text(tools::suggestedLabel(*meant, work_.plan()));
    return meant->entry->points.most == 1 ? meaningForPoint(what, std::move(*places))
                                          : meaningForLine(what, std::move(*places));
}

/// Another tool draws: places are its next points.
Tray::Meaning Tray::meaningForOthers(std::vector<geodesy::PlanePoint> places) const {
    if (!line_.words.empty()) {
        return {tr("Something is being drawn: type its next grid. Enter without one ends it."), false, true};
    }
    if (!places.empty()) {
        const QString what = text(table_.wet().what);
        return {what.isEmpty() ? tr("sets the next point there.") : tr("sets %1 there.").arg(what), true, false,
                std::move(places)};
    }
    return table_.isBusy() ? Meaning{tr("ends what is being drawn."), true} : Meaning{tr("Type its first grid.")};
}

Tray::Meaning Tray::meaningForPoint(const QString& what, std::vector<geodesy::PlanePoint> places) const {
    if (places.empty()) {
        return {tr("takes %1 to the pointer, for %2").arg(what, film()), true};
    }
    const QString words =
        places.size() == 1
            ? tr("places %1 on %2").arg(what, film())
            : tr("places %1 and %n more on %2", nullptr, static_cast<int>(places.size()) - 1).arg(what, film());
    return {words, true, false, std::move(places)};
}

Tray::Meaning Tray::meaningForLine(const QString& what, std::vector<geodesy::PlanePoint> places) const {
    const measures::PointCount count = taken()->entry->points;
    const auto least = static_cast<std::size_t>(count.least);
    const std::size_t set = pointsSet();
    const std::size_t all = set + places.size();
    if (count.most && all > static_cast<std::size_t>(*count.most)) {
        return {tr("%1 has %n points, no more.", nullptr, *count.most).arg(what), false, true};
    }
    if (places.empty()) {
        return set == 0 ? Meaning{tr("takes %1 to the pointer, for %2").arg(what, film()), true}
               : set < least
                   ? Meaning{tr("%1 needs %2 points, %3 set: type the next grid.").arg(what).arg(least).arg(set)}
                   : Meaning{tr("ends %1 with %2 points").arg(what).arg(set), true};
    }
    const bool isWhole = all >= least && (places.size() > 1 || (count.most && all == least));
    const QString words = isWhole              ? tr("draws %1 on %2, %3 points").arg(what, film()).arg(all)
                          : places.size() == 1 ? tr("sets point %1 of %2 on %3").arg(all).arg(what, film())
                                               : tr("sets points %1 to %2 of %3").arg(set + 1).arg(all).arg(what);
    return {words, true, false, std::move(places)};
}

}  // namespace crosstick::tray
