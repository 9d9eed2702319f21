// What is shown on further films, and what is traced from higher's.
#include <algorithm>
#include <map>

#include "core/files/plan_store.h"
#include "core/measures/catalogue.h"
#include "core/movement/route_figures.h"
#include "core/plan/edits.h"
#include "core/plan/traces.h"
#include "ui/details/trace_words.h"
#include "ui/tools/trace_tool.h"
#include "ui/window/list_names.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

/// An upright part of the printed grid between two corners.
class GridPart {
  public:
    GridPart(geodesy::PlanePoint a, geodesy::PlanePoint b)
        : low_{std::min(a.easting, b.easting), std::min(a.northing, b.northing)},
          high_{std::max(a.easting, b.easting), std::max(a.northing, b.northing)} {}
    [[nodiscard]] bool holds(geodesy::PlanePoint p) const {
        return p.easting >= low_.easting && p.easting <= high_.easting && p.northing >= low_.northing &&
               p.northing <= high_.northing;
    }

  private:
    geodesy::PlanePoint low_, high_;
};

/// By the names of their kinds: measures of other films of which a point lies in a part of the grid, and which the
/// working film does not show itself.
std::map<QString, std::vector<plan::TraceOrder>> tracesIn(const work::Work& work, geodesy::PlanePoint corner,
                                                          geodesy::PlanePoint opposite) {
    std::map<QString, std::vector<plan::TraceOrder>> kinds;
    std::set<plan::ItemId> met;
    const GridPart part(corner, opposite);
    const plan::Plan& plan = work.committed();
    const plan::FilmPtr working = work.workingFilm() ? plan.film(*work.workingFilm()) : nullptr;
    for (const plan::FilmPtr& film : work.filmsSeen()) {
        for (const plan::Showing& showing : film->shows) {
            const plan::MeasurePtr measure = plan.measure(showing.item);
            if (!working || !measure || plan::isShownOn(*working, measure->id) ||
                measure->anchor != plan::Anchor::Ground || !met.insert(measure->id).second) {
                continue;
            }
            const bool lies = std::any_of(measure->points.begin(), measure->points.end(), [&](geodesy::PlanePoint p) {
                const auto onGrid = work.grid()->onGrid(p);
                return onGrid && part.holds(*onGrid);
            });
            if (lies) {
                const measures::Entry* entry = measures::find(measure->kind);
                kinds[text(entry == nullptr ? std::string_view(measure->kind) : entry->name)].push_back(
                    {measure->id, film->id, files::contentHash(*measure), {}});
            }
        }
    }
    return kinds;
}

}  // namespace

/// Onto the working film, or off it.
void Window::showHere() {
    const plan::FilmPtr film = work_.workingFilm() ? work_.committed().film(*work_.workingFilm()) : nullptr;
    if (!work_.selected() || !film) {
        return say(tr("Choose a thing on the table first."));
    }
    showOn(film->id, !plan::isShownOn(*film, *work_.selected()));
}

void Window::showOn(const plan::FilmId& film, bool shown) {
    const plan::FilmPtr held = work_.committed().film(film);
    const auto item = work_.selected();
    if (!held || !item) {
        return;
    }
    if (held->pinned) {
        return say(tr("%1 is pinned: nothing is laid on it or taken off it.").arg(text(held->name)));
    }
    const plan::Plan next =
        shown ? plan::shownOn(work_.committed(), *item, film) : plan::notShownOn(work_.committed(), *item, film);
    work_.commit(next, shown ? "show on a film" : "take off a film");
    const auto& films = next.films();
    const bool isAnywhere =
        std::any_of(films.begin(), films.end(), [&](const plan::FilmPtr& one) { return plan::isShownOn(*one, *item); });
    say(isAnywhere
            ? QString()
            : tr("No film shows it any more; it stays in the plan. Ctrl+U lays it on %1 again.").arg(text(held->name)));
}

void Window::fillShownOn(QMenu& menu) {
    const auto item = work_.selected();
    for (const plan::FilmPtr& film : work_.plan().films()) {
        QAction* action = menu.addAction(text(film->name));
        action->setCheckable(true);
        action->setChecked(item && plan::isShownOn(*film, *item));
        action->setEnabled(item && !film->pinned);
        connect(action, &QAction::toggled, this, [this, id = film->id](bool on) { showOn(id, on); });
    }
}

void Window::askForFilms() {
    if (!work_.selected()) {
        return say(tr("Choose a thing on the table first."));
    }
    auto* menu = new QMenu(this);
    menu->setAttribute(Qt::WA_DeleteOnClose);
    fillShownOn(*menu);
    menu->popup(table_->mapToGlobal(QPoint(table_->width() / 3, table_->height() / 3)));
}

/// The selected thing of another film at once, else by hand.
void Window::trace() {
    const plan::FilmPtr film = work_.workingFilm() ? work_.committed().film(*work_.workingFilm()) : nullptr;
    if (!film) {
        return say(tr("There is no film to trace onto. Edit, New film makes one."));
    }
    if (film->pinned) {
        return say(tr("%1 is pinned: nothing is drawn on it.").arg(text(film->name)));
    }
    say({});
    const plan::MeasurePtr measure = work_.selected() ? work_.committed().measure(*work_.selected()) : nullptr;
    if (measure && !plan::isShownOn(*film, measure->id)) {
        const auto films = work_.filmsSeen();
        const auto from = std::find_if(films.rbegin(), films.rend(),
                                       [&](const plan::FilmPtr& one) { return plan::isShownOn(*one, measure->id); });
        if (from != films.rend()) {
            return takeTraces({{measure->id, (*from)->id, files::contentHash(*measure), {}}},
                              "trace " + movement::label(*measure));
        }
    }
    work_.select(std::nullopt);
    detailsWanted_ = false;
    arrange();
    layTrayAway();
    table_->setTool(std::make_unique<tools::TraceTool>(
        gridWays(), [](const plan::Measure& one) { return files::contentHash(one); },
        [this](geodesy::PlanePoint corner, geodesy::PlanePoint opposite) { offerTraces(corner, opposite); }));
    table_->setFocus();
}

void Window::takeTraces(const std::vector<plan::TraceOrder>& orders, const std::string& caption) {
    if (!work_.workingFilm()) {
        return;
    }
    plan::Traced traced =
        plan::traced(work_.committed(), orders, *work_.workingFilm(), [this] { return work_.newId(); });
    work_.commit(std::move(traced.plan), caption);
    if (traced.copies.size() == 1) {
        work_.select(traced.copies.front());
    }
    table_->setFocus();
}

/// What other films show in a box, by kind.
void Window::offerTraces(geodesy::PlanePoint corner, geodesy::PlanePoint opposite) {
    const auto found = tracesIn(work_, corner, opposite);
    if (found.empty()) {
        return say(tr("Nothing of another film lies in the box that the working film does not show itself."));
    }
    say({});
    std::vector<phases::OfferCard::Group> groups;
    std::vector<plan::TraceOrder> orders;
    for (const auto& [kind, things] : found) {
        groups.push_back({kind, {}});
        for (const plan::TraceOrder& order : things) {
            groups.back().rows.push_back({listName(work_.committed(), order.item), true});
            orders.push_back(order);
        }
    }
    offers_->offer({tr("Trace"), tr("what other films show in the box"), tr("Trace onto the working film"), {}, groups},
                   [this, orders](const phases::OfferCard::Answer& answer) -> std::optional<QString> {
                       std::vector<plan::TraceOrder> taken;
                       for (std::size_t n = 0; n < orders.size(); ++n) {
                           if (answer.taken[n]) {
                               taken.push_back(orders[n]);
                           }
                       }
                       takeTraces(taken, "trace what lies in a box");
                       return std::nullopt;
                   });
}

/// The selected one where it is stale, else all.
void Window::renewTraces() {
    plan::Plan next = work_.committed();
    int renewed = 0;
    const std::vector<files::StaleTrace> stale = work_.staleTraces();
    const bool isOne = std::any_of(stale.begin(), stale.end(),
                                   [&](const files::StaleTrace& one) { return work_.selected() == one.copy; });
    for (const files::StaleTrace& one : stale) {
        if (one.source && (!isOne || work_.selected() == one.copy)) {
            next = plan::renewedTrace(next, one.copy, files::contentHash(*one.source));
            ++renewed;
        }
    }
    if (renewed == 0) {
        return say(tr("All that was traced is as higher's films show it."));
    }
    work_.commit(std::move(next), renewed == 1 ? "renew a trace" : "renew traces");
    say(renewed == 1 ? tr("It lies as higher's film shows it now.")
                     : tr("%n traces lie as higher's films show them now.", nullptr, renewed));
}

/// A fault that stays until it is mended: what was traced and is another now.
void Window::tellOfTraces() {
    const auto& stale = work_.staleTraces();
    if (stale.empty()) {
        return notices_->mend("traces");
    }
    const QString first = details::staleWords(work_.plan(), stale.front());
    notices_->keep(
        "traces",
        stale.size() == 1
            ? first
            : tr("%1 %n more trace(s) are out of date.", nullptr, static_cast<int>(stale.size()) - 1).arg(first),
        {{tr("Show"),
          [this] {
              if (!work_.staleTraces().empty()) {
                  work_.select(work_.staleTraces().front().copy);
              }
          }},
         {tr("Renew"), [this] { renewTraces(); }}});
}

}  // namespace crosstick::window
