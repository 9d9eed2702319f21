// Tables in the sill; the profile's hand and the table's; how far a navigator may drift.
#include <cmath>
#include <numbers>
#include <tuple>

#include "core/movement/drift.h"
#include "core/movement/paper_figures.h"
#include "core/movement/typed_timing.h"
#include "core/units/number_text.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

using march::TablesSill;

constexpr double kReach = 40;  ///< pixels from the way that still mean a place of the profile

QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

/// Round the end of a leg, in the grid of the work.
std::vector<geodesy::PlanePoint> ellipseRound(geodesy::PlanePoint end, const movement::DriftEllipse& ellipse) {
    constexpr int kCorners = 60;
    const double turn = radians(ellipse.gridAzimuth).value();
    std::vector<geodesy::PlanePoint> line;
    for (int n = 0; n < kCorners; ++n) {
        const double angle = 2 * std::numbers::pi * n / kCorners;
        const Metres along = ellipse.major * std::cos(angle);
        const Metres across = ellipse.minor * std::sin(angle);
        line.push_back({end.easting + along * std::sin(turn) + across * std::cos(turn),
                        end.northing + along * std::cos(turn) - across * std::sin(turn)});
    }
    return line;
}

std::string axes(const movement::DriftEllipse& ellipse) {
    return numberText(ellipse.major.value(), 0) + " x " + numberText(ellipse.minor.value(), 0) + " m";
}

}  // namespace

void Window::addTableDeeds(QMenu* menu) {
    using Page = TablesSill::Page;
    const std::tuple<const char*, QString, const char*, Page> deeds[] = {
        {"march", tr("Order of march"), "Ctrl+Shift+O", Page::Order},
        {"elements", tr("Elements"), "Ctrl+2", Page::Elements},
        {"tasks", tr("Tasks"), "Ctrl+3", Page::Tasks},
        {"events", tr("Events"), "Ctrl+4", Page::Events},
        {"matrix", tr("Execution matrix"), "Ctrl+5", Page::Matrix},
        {"march-table", tr("March table"), "Ctrl+6", Page::MarchTable},
        {"profile", tr("Profile"), "Ctrl+7", Page::Profile},
        {"light", tr("Light of the day"), "Ctrl+8", Page::Light}};
    for (const auto& [name, words, key, page] : deeds) {
        add(menu, name, words, QKeySequence(QString::fromLatin1(key)), [this, page = page] {
            if (marchWanted_ && tablesPage() == page) {
                marchWanted_ = false;
                arrange();
            } else {
                turnToPage(page);
            }
        })->setCheckable(true);
    }
}

/// How a march is timed, listed and looked at.
void Window::addMarchDeeds(QMenu* menu) {
    const auto toggle = [&](const char* name, const QString& words, const char* key, Does does) {
        add(menu, name, words, QKeySequence(QString::fromLatin1(key)), std::move(does))->setCheckable(true);
    };
    toggle("timing", tr("Timing: rates, start, paces"), "Ctrl+Shift+H", [this] {
        timingWanted_ = timing_.made() == nullptr || !timing_->isVisible();
        bare_ = bare_ && !timingWanted_;
        if (timingWanted_) {
            showARoute();
        }
        arrange();
        timingWanted_ ? timing_->begin() : table_->setFocus();
    });
    toggle("bends", tr("Legs bend by bend"), "Ctrl+Shift+Y", [this] {
        ledger_->setRows(ledger_->legs().rows() == ledger::Rows::Bends ? ledger::Rows::Legs : ledger::Rows::Bends);
        arrange();
    });
    addTableDeeds(menu->addMenu(tr("Tables")));
    toggle("drift", tr("Drift at the end of each leg"), "Ctrl+Shift+E", [this] {
        driftWanted_ = !driftWanted_;
        if (driftWanted_) {
            showARoute();
        }
        renewDrift();
        tellOfDrift();
        renewHead();
    });
}

void Window::turnToPage(TablesSill::Page page) {
    marchWanted_ = true;
    bare_ = false;
    if (page > TablesSill::Page::Matrix) {
        showARoute();
    }
    tables_->show(page);
    arrange();
}

void Window::connectTables(TablesSill& tables) {
    connect(&tables, &TablesSill::left, this, [this] { table_->setFocus(); });
    connect(&tables, &TablesSill::pageWanted, this, &Window::turnToPage);
    connect(&tables.order(), &march::MarchSill::refused, this, [this](const QString& why) { say(why); });
    connect(&tables.profile(), &march::ProfileStrip::pointedAt, table_, &table::LightTable::setMark);
    connect(table_, &table::LightTable::pointedAt, &tables, [this, &tables](geodesy::PlanePoint onGrid) {
        if (tables.isVisible() && tables.page() == TablesSill::Page::Profile) {
            tables.profile().showNear(onGrid, Metres(kReach / table_->view().zoom().value()));
        }
    });
}

TablesSill::Page Window::tablesPage() const {
    return tables_.made() != nullptr ? tables_.made()->page() : TablesSill::Page::Order;
}

/// Round the end of each leg of the ledger's route, while it is wanted.
void Window::renewDrift() {
    std::vector<table::Guide> guides;
    const plan::RoutePtr route = driftWanted_ && work_.isOpen() && !work_.wetPlan() ? work_.ledgerRoute() : nullptr;
    const auto figures = route ? work_.figures().find(route->id) : work_.figures().end();
    if (figures != work_.figures().end()) {
        const auto drift = movement::routeDrift(work_.plan(), figures->second, std::nullopt, movement::kFoundWithin);
        for (std::size_t n = 0; n < drift.legs.size(); ++n) {
            const movement::LegDrift& leg = drift.legs[n];
            guides.push_back({ellipseRound(figures->second.legs[n].pieces.back().to, leg.ellipse),
                              std::to_string(leg.leg) + ": " + axes(leg.ellipse),
                              leg.isLarger() ? table::Guide::Weight::Heavy : table::Guide::Weight::Thin});
        }
    }
    table_->setGuides(std::move(guides));
}

void Window::tellOfDrift() {
    if (!driftWanted_) {
        say({});
        return;
    }
    const plan::RoutePtr route = routeInHand();
    const auto figures = route ? work_.figures().find(route->id) : work_.figures().end();
    if (figures == work_.figures().end()) {
        return;
    }
    const auto drift = movement::routeDrift(work_.plan(), figures->second, std::nullopt, movement::kFoundWithin);
    QStringList larger;
    for (const movement::LegDrift& leg : drift.legs) {
        if (leg.isLarger()) {
            larger << QString::number(leg.leg);
        }
    }
    const bool isOwn = work_.plan().heading().navigator.has_value();
    const QString by = (isOwn ? tr("By the navigator's own %1,") : tr("By %1, our own figures,"))
                           .arg(text(movement::navigatorText(drift.errors)));
    const QString safe =
        tr("Longest safe leg to a point found within %1 m: %2 m.")
            .arg(text(numberText(drift.foundWithin.value(), 0)), text(numberText(drift.longestSafeLeg.value(), 0)));
    const QString title = text(movement::routeTitle(route->name));
    say((larger.isEmpty() ? tr("%1 no leg of %2 ends wider than its point is found within.").arg(by, title)
                          : tr("%1 these legs of %2 end wider than their points are found within: %3.")
                                .arg(by, title, larger.join(QStringLiteral(", ")))) +
        QLatin1Char(' ') + safe);
}

}  // namespace crosstick::window
