// From phase to phase: what the next one begins with, films that two share.
#include <algorithm>
#include <array>
#include <map>

#include "core/plan/joined_phases.h"
#include "core/plan/next_phase.h"
#include "ui/window/list_names.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

using plan::Because;

QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

/// Why things are offered as they are, as the title over them.
QString titleOf(const plan::Plan& plan, const plan::Offer& offer) {
    const QString way = offer.way ? listName(plan, *offer.way) : QString();
    switch (offer.because) {
        case Because::Marched:
            return Window::tr("Where %1 ends, assumed").arg(way);
        case Because::Stood:
            return Window::tr("Where they stood, assumed");
        case Because::LivesOn:
            return Window::tr("Lives on");
        case Because::StillToCome:
            return Window::tr("Still to come");
        case Because::LeftBehind:
            return Window::tr("Left on %1").arg(way);
        case Because::Crossed:
            return Window::tr("Crossed on %1").arg(way);
        case Because::Walked:
            return way.isEmpty() ? Window::tr("Walked") : Window::tr("Passed on %1").arg(way);
        case Because::OfThePhase:
            return Window::tr("Served this phase alone");
        case Because::Expired:
            return Window::tr("Its time is over");
    }
    return {};
}

/// The order of the groups: what goes over first.
int rankOf(Because because) {
    constexpr std::array kOrder{Because::Marched,     Because::Stood,      Because::LivesOn,
                                Because::StillToCome, Because::LeftBehind, Because::Crossed,
                                Because::Walked,      Because::OfThePhase, Because::Expired};
    return static_cast<int>(std::find(kOrder.begin(), kOrder.end(), because) - kOrder.begin());
}

/// Groups of the card, and which offer each of its rows stands for.
struct Rows {
    std::vector<phases::OfferCard::Group> groups;
    std::vector<std::size_t> offers;
};

Rows rowsOf(const plan::Plan& plan, const plan::NextPhase& next) {
    std::map<std::pair<int, QString>, std::vector<std::size_t>> grouped;
    for (std::size_t n = 0; n < next.offers.size(); ++n) {
        grouped[{rankOf(next.offers[n].because), titleOf(plan, next.offers[n])}].push_back(n);
    }
    Rows rows;
    for (const auto& [title, offers] : grouped) {
        phases::OfferCard::Group group{title.second, {}};
        for (const std::size_t n : offers) {
            group.rows.push_back({listName(plan, next.offers[n].item), next.offers[n].taken});
            rows.offers.push_back(n);
        }
        rows.groups.push_back(std::move(group));
    }
    return rows;
}

}  // namespace

void Window::startNextPhase() {
    const auto next = plan::proposedNextPhase(work_.committed(), work_.phase());
    if (!next) {
        return say(tr("Choose the phase that comes to its end on the rail first; Edit, New phase names one."));
    }
    if (next->offers.empty()) {
        return say(tr("What phase %1 shows lies on films of phase %2 already. Ctrl+Alt+D parts the working film.")
                       .arg(next->after)
                       .arg(next->phase.number));
    }
    say({});
    Rows rows = rowsOf(work_.committed(), *next);
    const int number = next->phase.number;
    offers_->offer({tr("Phase %1").arg(number),
                    tr("follows phase %1; tick what its film is to show").arg(next->after),
                    tr("Begin phase %1").arg(number),
                    {{tr("Name of the phase"), text(next->phase.name)}, {tr("Name of its film"), text(next->film)}},
                    std::move(rows.groups)},
                   [this, next = *next, order = std::move(rows.offers)](const phases::OfferCard::Answer& answer) {
                       return takeNextPhase(next, order, answer);
                   });
}

std::optional<QString> Window::takeNextPhase(plan::NextPhase next, const std::vector<std::size_t>& order,
                                             const phases::OfferCard::Answer& answer) {
    next.phase.name = answer.fields[0].toStdString();
    next.film = answer.fields[1].toStdString();
    if (next.film.empty() || work_.committed().filmNamed(next.film)) {
        return next.film.empty() ? tr("Give the film a name.")
                                 : tr("%1 is the name of another film. Give this one its own.").arg(answer.fields[1]);
    }
    int assumed = 0;
    for (std::size_t n = 0; n < order.size(); ++n) {
        plan::Offer& offer = next.offers[order[n]];
        offer.taken = answer.taken[n];
        assumed += offer.taken && offer.passage == plan::Passage::Proposed ? 1 : 0;
    }
    const Uuid film = work_.newId();
    work_.commit(plan::withNextPhase(work_.committed(), next, film, [this] { return work_.newId(); }),
                 "begin phase " + std::to_string(next.phase.number));
    work_.setPhase(next.phase.number);
    work_.setWorkingFilm(film);
    say(assumed == 0 ? tr("Phase %1 is begun on %2.").arg(next.phase.number).arg(answer.fields[1])
                     : tr("Phase %1 is begun on %2. %n thing(s) stand dashed where they are assumed to be: move them, "
                          "or confirm them on their cards.",
                          nullptr, assumed)
                           .arg(next.phase.number)
                           .arg(answer.fields[1]));
    table_->setFocus();
    return std::nullopt;
}

void Window::joinWithNextPhase() {
    const plan::FilmPtr film = work_.workingFilm() ? work_.committed().film(*work_.workingFilm()) : nullptr;
    const auto next = film ? plan::nextPhaseOf(work_.committed(), *film) : std::nullopt;
    if (!next) {
        return say(tr("The working film serves no phase that another one follows. Edit, New phase names one."));
    }
    work_.commit(plan::joinedWithNextPhase(work_.committed(), film->id), "join a film with the next phase");
    work_.setWorkingFilm(film->id);
    say(tr("%1 serves phase %2, too. Ctrl+Alt+D parts them again.").arg(text(film->name)).arg(*next));
}

/// After the chosen phase where the film goes on beyond it, else before its last one.
void Window::partPhases() {
    const plan::FilmPtr film = work_.workingFilm() ? work_.committed().film(*work_.workingFilm()) : nullptr;
    if (!film || film->phases.size() < 2 || film->inset) {
        return say(tr("The working film does not serve two phases: there is nothing to part."));
    }
    const int last = *film->phases.rbegin();
    const int after = film->phases.contains(work_.phase()) && work_.phase() < last ? work_.phase()
                                                                                   : *std::prev(film->phases.end(), 2);
    std::string name = "PHASE " + std::to_string(*film->phases.upper_bound(after));
    while (work_.committed().filmNamed(name)) {
        name += " B";
    }
    work_.commit(plan::partedAfterPhase(work_.committed(), film->id, after, work_.newId(), name),
                 "part the phases of a film");
    say(tr("%1 goes to the end of phase %2; %3 takes over. Look through both: what serves one of them alone is a "
           "guess.")
            .arg(text(film->name))
            .arg(after)
            .arg(text(name)));
}

}  // namespace crosstick::window
