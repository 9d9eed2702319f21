#include "ui/phases/film_facts.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QStringList>

#include "core/plan/edits.h"

namespace crosstick::phases {
namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("Film", words);
}

QString percent(const FilmFacts& facts) {
    return QString::number(qRound(facts.look.strength * 100));
}

QString staleWords(const plan::Measure& copy, const files::StaleTrace& trace) {
    const QString name = QString::fromStdString(movement::label(copy));
    if (!trace.source) {
        return name + tr(", higher shows it no more");
    }
    const auto metres = std::lround(trace.moved.value());
    return metres > 0 ? name + tr(", higher moved it %1 m").arg(metres) : name + tr(", higher words it otherwise");
}

}  // namespace

FilmFacts factsOf(const work::Work& work, const plan::Film& film) {
    const auto& stack = work.plan().films();
    const auto at =
        std::find_if(stack.begin(), stack.end(), [&](const plan::FilmPtr& other) { return other->id == film.id; });
    FilmFacts facts;
    facts.film = film.id;
    facts.name = QString::fromStdString(film.name);
    facts.place = static_cast<int>(at - stack.begin()) + 1;
    facts.phases = film.phases;
    facts.pinned = film.pinned;
    facts.works = work.workingFilm() == film.id;
    facts.ofPhase = work.phase() == 0 || film.phases.empty() || film.phases.contains(work.phase());
    facts.seen = work.isSeen(film.id);
    facts.look = work.look(film.id);
    facts.measures = film.shows.size();
    for (const plan::Showing& showing : film.shows) {
        if (const plan::MeasurePtr measure = work.plan().measure(showing.item)) {
            facts.unplaced += measure->state == plan::PlaceState::Unplaced ? 1U : 0U;
            facts.assumed += measure->state == plan::PlaceState::Assumed ? 1U : 0U;
        }
    }
    for (const files::StaleTrace& trace : work.staleTraces()) {
        const plan::MeasurePtr copy = plan::isShownOn(film, trace.copy) ? work.plan().measure(trace.copy) : nullptr;
        if (copy && facts.stale++ == 0) {
            facts.firstStale = staleWords(*copy, trace);
        }
    }
    return facts;
}

QString tintWord(work::Tint tint) {
    switch (tint) {
        case work::Tint::Amber:
            return tr("amber");
        case work::Tint::Rose:
            return tr("rose");
        case work::Tint::Teal:
            return tr("teal");
        case work::Tint::None:
            break;
    }
    return {};
}

QString phasesWords(const std::set<int>& phases) {
    if (phases.empty()) {
        return tr("all phases");
    }
    if (phases.size() == 1) {
        return tr("phase %1").arg(*phases.begin());
    }
    if (*phases.rbegin() - *phases.begin() + 1 == static_cast<int>(phases.size())) {
        return tr("phases %1 to %2").arg(*phases.begin()).arg(*phases.rbegin());
    }
    QStringList all;
    for (const int phase : phases) {
        all.push_back(QString::number(phase));
    }
    return tr("phases %1").arg(all.join(QStringLiteral(", ")));
}

QString spoken(const FilmFacts& facts) {
    QString words = facts.name + QStringLiteral(", ") + tr("film %1").arg(facts.place);
    if (facts.pinned) {
        words += tr(", pinned");
    }
    if (facts.look.strength < 1) {
        words += tr(", faded to %1 %").arg(percent(facts));
    }
    if (facts.look.tint != work::Tint::None) {
        words += tr(", tinted %1").arg(tintWord(facts.look.tint));
    }
    if (!facts.look.shown) {
        words += tr(", hidden");
    } else if (!facts.ofPhase) {
        words += tr(", of another phase");
    } else if (!facts.seen) {
        words += tr(", not on the sheet now");
    }
    return words;
}

QString countLine(const FilmFacts& facts) {
    const QString count = facts.measures == 1 ? tr("1 measure") : tr("%1 measures").arg(facts.measures);
    if (facts.works && !facts.pinned) {
        return count + tr(", you are drawing here");
    }
    return facts.phases.empty() ? count + tr(", all phases") : count;  // where it stands says which
}

StateLine stateLine(const FilmFacts& facts) {
    using Mark = StateLine::Mark;
    if (facts.stale > 0) {
        return {
            Mark::PartedLines,
            (facts.stale == 1 ? tr("1 stale trace: ") : tr("%1 stale traces: ").arg(facts.stale)) + facts.firstStale};
    }
    if (facts.unplaced > 0) {
        return {Mark::DashedBox, tr("%1 still to place").arg(facts.unplaced)};
    }
    if (!facts.look.shown) {
        return {Mark::None, tr("hidden")};
    }
    if (facts.ofPhase && !facts.seen) {
        return {Mark::None, tr("not on the sheet now")};
    }
    QStringList lies;
    if (facts.look.strength < 1) {
        lies.push_back(tr("faded to %1 %").arg(percent(facts)));
    }
    if (facts.look.tint != work::Tint::None) {
        lies.push_back(tr("tinted %1").arg(tintWord(facts.look.tint)));
    }
    if (!lies.isEmpty()) {
        return {Mark::HalvedSheet, lies.join(QStringLiteral(", "))};
    }
    if (facts.pinned) {
        return {Mark::Pin, tr("pinned: trace from it, it is not drawn on")};
    }
    if (facts.assumed > 0) {
        return {Mark::None, tr("%1 assumed").arg(facts.assumed)};
    }
    return {Mark::None, facts.ofPhase ? QString() : tr("not shown now")};
}

}  // namespace crosstick::phases
