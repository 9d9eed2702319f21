#include "ui/details/card_figures.h"

#include <cmath>

#include <QCoreApplication>

#include "core/movement/evacuation.h"
#include "core/movement/paper_figures.h"
#include "core/plan/showings.h"

namespace crosstick::details {
namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("CardFigures", words);
}

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

QString metres(std::int64_t length) {
    return tr("%1 m").arg(length);
}

QString azimuth(const std::string& figures, geodesy::AngleUnit unit) {
    return text(figures) + (unit == geodesy::AngleUnit::Mils ? tr(" mils") : QStringLiteral("\u00b0"));
}

QString known(const std::optional<std::int64_t>& length) {
    return length ? metres(*length) : tr("unknown");
}

/// The leg of a route that ends on a measure, on the paper as it is.
std::vector<FigureRow> legTo(const work::Work& work, const plan::ItemId& item) {
    for (const auto& [route, figures] : work.figures()) {
        for (std::size_t n = 0; n < figures.legs.size(); ++n) {
            if (figures.legs[n].to != item) {
                continue;
            }
            const auto paper = movement::paperFigures(work.plan(), figures, work.angles());
            if (!paper || n >= paper->legs.size() || paper->legs[n].pieces.empty()) {
                return {};
            }
            const movement::PaperLeg& leg = paper->legs[n];
            const movement::PaperPiece& piece = leg.pieces.front();
            std::vector<FigureRow> rows{{tr("From %1 on %2").arg(text(leg.from), text(paper->name)), {}}};
            if (leg.pieces.size() == 1) {
                rows.push_back({tr("azimuth, magnetic"), azimuth(piece.magnetic, work.angles())});
                rows.push_back({tr("azimuth, grid"), azimuth(piece.grid, work.angles())});
                rows.push_back({tr("back azimuth, magnetic"), azimuth(piece.backMagnetic, work.angles())});
            } else {
                rows.push_back({tr("bends"), QString::number(leg.pieces.size() - 1)});
            }
            rows.push_back({tr("distance"), metres(leg.metres)});
            rows.push_back({tr("climb"), known(leg.climb)});
            rows.push_back({tr("arrives"), leg.arrival.empty() ? tr("unknown") : text(leg.arrival)});
            return rows;
        }
    }
    return {};
}

/// How far the hurt are carried from a route.
void addCarry(std::vector<FigureRow>& rows, const work::Work& work, const movement::RouteFigures& figures) {
    const auto evacuation = movement::evacuationFrom(work.plan(), figures);
    if (!evacuation || !*evacuation) {
        return;
    }
    const auto way = [](const movement::Carry& carry) {
        return metres(std::llround(geodesy::roundedDistance(carry.ground).value())) +
               (carry.time ? QStringLiteral(", ") + text(movement::timeText(*carry.time)) : QString());
    };
    if (const auto& carry = (*evacuation)->carry) {
        rows.push_back({tr("Carry to %1").arg(text((*evacuation)->collection->label)), {}});
        rows.push_back({tr("from %1, straight").arg(text(carry->straight.spot)), way(carry->straight)});
        rows.push_back({tr("from %1, by the route").arg(text(carry->byRoute.spot)), way(carry->byRoute)});
    }
    if (const auto& pickUp = (*evacuation)->pickUp) {
        rows.push_back({tr("pick-up, %1").arg(text(pickUp->label)), text(pickUp->grid)});
    }
}

std::vector<FigureRow> ofRoute(const work::Work& work, const plan::ItemId& route,
                               const std::function<QString(const Error&)>& say) {
    const auto figures = work.figures().find(route);
    if (figures == work.figures().end()) {
        const auto fault = work.figuresFault(route);
        return fault ? std::vector<FigureRow>{{say(*fault), {}}} : std::vector<FigureRow>{};
    }
    const auto paper = movement::paperFigures(work.plan(), figures->second, work.angles());
    if (!paper) {
        return {{say(paper.error()), {}}};
    }
    std::vector<FigureRow> rows{{tr("legs"), QString::number(paper->legs.size())},
                                {tr("map distance"), metres(paper->metres)},
                                {tr("ground distance"), metres(paper->groundMetres)},
                                {paper->fromContours ? tr("climb, from contours") : tr("climb"), known(paper->climb)}};
    if (figures->second.use != plan::Use::Vehicle) {
        rows.push_back({tr("time"), paper->time.empty() ? tr("unknown") : text(paper->time)});
        rows.push_back({tr("arrives"), paper->arrival.empty() ? tr("unknown") : text(paper->arrival)});
    }
    addCarry(rows, work, figures->second);
    return rows;
}

}  // namespace

std::vector<FigureRow> cardFigures(const work::Work& work, const plan::ItemId& item,
                                   const std::function<QString(const Error&)>& say) {
    if (work.plan().route(item)) {
        return ofRoute(work, item, say);
    }
    const plan::MeasurePtr measure = work.plan().measure(item);
    if (!measure || measure->points.empty() || work.grid() == nullptr || measure->anchor != plan::Anchor::Ground) {
        return {};
    }
    if (measure->points.size() > 1) {
        return {{tr("points"), QString::number(measure->points.size())}};
    }
    std::vector<FigureRow> rows = legTo(work, item);
    const plan::FilmPtr film = work.workingFilm() ? work.plan().film(*work.workingFilm()) : nullptr;
    if (film && plan::leaderOf(*film, item) != item) {
        const plan::MeasurePtr leader = work.plan().measure(plan::leaderOf(*film, item));
        const auto words = leader ? leader->fields.find("unit") : measure->fields.end();
        rows.push_back(
            {tr("in the row of"), leader && words != leader->fields.end() ? text(words->second) : tr("another unit")});
    }
    const auto height =
        work.heights() != nullptr ? work.heights()->heightAt(measure->points.front()) : std::optional<Metres>();
    rows.push_back({tr("height"), height ? metres(std::llround(height->value())) : tr("unknown")});
    if (const auto onGrid = work.grid()->onGrid(measure->points.front())) {
        rows.push_back({tr("exact, E"), QString::number(onGrid->easting.value(), 'f', 1)});
        rows.push_back({tr("exact, N"), QString::number(onGrid->northing.value(), 'f', 1)});
    }
    return rows;
}

}  // namespace crosstick::details
