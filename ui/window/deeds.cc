#include <algorithm>
#include <cmath>

#include <QFileDialog>
#include <QInputDialog>
#include <QSettings>
#include <QThreadPool>
#include <QTimer>

#include "core/film/new_plan.h"
#include "core/film/registration.h"
#include "core/geodesy/grid_reference.h"
#include "core/plan/edits.h"
#include "core/sheets/faults.h"
#include "core/sheets/sheet_file.h"
#include "ui/tools/place_tool.h"
#include "ui/tools/route_tool.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

constexpr int kMostRecent = 8;

QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

plan::Heading freshHeading(Instant now, const std::string& name) {
    plan::Heading heading;
    heading.name = name;
    heading.date = localDate(now, heading.zone);
    heading.prepared = now;
    return heading;
}

/// A first phase with a film, so that there is something to draw on.
plan::Plan withFirstFilm(const plan::Plan& plan, const Uuid& film) {
    plan::PlanBuilder builder(plan);
    builder.phases({plan::Phase{1, "", {}, {}, {}}});
    return plan::withFilm(std::move(builder).build(), film, "SCHEME", {1});
}

}  // namespace

void Window::askForPlan() {
    const QString file = QFileDialog::getOpenFileName(
        this, tr("Take up a plan"), settings_->value(QStringLiteral("folder")).toString(), tr("Plans (*.gpkg)"));
    if (!file.isEmpty()) {
        openPlan(file.toStdString());
    }
}

void Window::openPlan(const std::filesystem::path& file) {
    if (auto opened = work_.open(file); !opened) {
        say(outside_.say(opened.error()));
        return;
    }
    remember();
}

void Window::askForSheet() {
    const QString file =
        QFileDialog::getOpenFileName(this, tr("Lay a map sheet"), settings_->value(QStringLiteral("folder")).toString(),
                                     tr("Map sheets (*.tif *.tiff)"));
    if (!file.isEmpty()) {
        openSheet(file.toStdString());
    }
}

/// The sheet is looked through on another thread: its checksum reads the whole file.
void Window::openSheet(const std::filesystem::path& file, std::optional<Scale> scale) {
    say(tr("Reading %1").arg(text(file.filename().string())));
    const Uuid id = work_.newId();
    QThreadPool::globalInstance()->start([this, file, scale, id] {
        auto sheet = std::make_shared<Result<plan::Sheet>>(sheets::describeSheet(file, id, scale));
        QMetaObject::invokeMethod(this, [this, sheet, file, scale] {
            if (!*sheet && sheet->error().fault == sheets::kNoScale && !scale) {
                bool given = false;
                const int number = QInputDialog::getInt(this, tr("Scale of the sheet"),
                                                        tr("The file does not say its scale. It is printed on the "
                                                           "sheet: 1 to"),
                                                        25000, 1000, 1000000, 1000, &given);
                if (given) {
                    openSheet(file, Scale{static_cast<double>(number)});
                }
                return;
            }
            if (!*sheet) {
                say(outside_.say(sheet->error()));
                return;
            }
            const std::string name = (*sheet)->name.empty() ? file.stem().string() : (*sheet)->name;
            (*sheet)->path = std::filesystem::absolute(file).string();
            if (!(*sheet)->elevationPath.empty()) {
                (*sheet)->elevationPath =
                    (std::filesystem::absolute(file).parent_path() / (*sheet)->elevationPath).string();
            }
            auto plan = film::planOnSheet(std::move(**sheet), freshHeading(outside_.now(), name), work_.newId());
            if (!plan) {
                say(outside_.say(plan.error()));
                return;
            }
            begin(std::move(*plan), file.parent_path());
        });
    });
}

void Window::begin(plan::Plan plan, const std::filesystem::path& folder) {
    say({});
    work_.begin(withFirstFilm(plan, work_.newId()), std::filesystem::absolute(folder));
}

void Window::askForGrid() {
    const QString typed = QInputDialog::getText(this, tr("Start from the grid alone"),
                                                tr("A grid near the middle of the ground, such as 25T FL 54 97:"));
    if (typed.trimmed().isEmpty()) {
        return;
    }
    const auto reference = geodesy::parsePoint(typed.toStdString());
    if (!reference) {
        say(outside_.say(reference.error()));
        return;
    }
    bool given = false;
    const int number = QInputDialog::getInt(this, tr("Scale of the sheet in your hand"), tr("1 to"), 25000, 1000,
                                            1000000, 1000, &given);
    if (given) {
        begin(film::planOnGrid(reference->southWest, Scale{static_cast<double>(number)},
                               freshHeading(outside_.now(), tr("New plan").toStdString()), work_.newId()),
              std::filesystem::current_path());
    }
}

void Window::openDemo() {
    say(tr("Making the demo island; this takes some ten seconds the first time"));
    actions_.at("demo")->setEnabled(false);
    QThreadPool::globalInstance()->start([this, demo = outside_.demo] {
        auto made = std::make_shared<Result<std::filesystem::path>>(demo());
        QMetaObject::invokeMethod(this, [this, made] {
            actions_.at("demo")->setEnabled(true);
            if (*made) {
                openPlan(**made);
            } else {
                say(outside_.say(made->error()));
            }
        });
    });
}

void Window::save() {
    if (work_.file().empty()) {
        askAndSaveAs();
        return;
    }
    const auto saved = work_.save(outside_.now());
    say(saved ? tr("Saved: %1").arg(text(work_.file().string()))
              : outside_.say(saved.error()) + QLatin1Char(' ') + tr("Plan, Save as writes it elsewhere."));
    remember();
}

void Window::askAndSaveAs() {
    const auto base = work_.file().empty() ? work_.folder() / (work_.plan().heading().name + ".gpkg") : work_.file();
    const QString file =
        QFileDialog::getSaveFileName(this, tr("Save the plan as"), text(base.string()), tr("Plans (*.gpkg)"));
    if (!file.isEmpty()) {
        saveTo(file.toStdString());
    }
}

void Window::saveTo(const std::filesystem::path& file) {
    const auto saved = work_.saveAs(file, outside_.now());
    say(saved ? tr("Saved: %1").arg(text(work_.file().string())) : outside_.say(saved.error()));
    if (saved) {
        remember();
    }
}

/// The plan goes to the top of the list of recent ones.
void Window::remember() {
    if (!work_.isOpen() || work_.file().empty()) {
        return;
    }
    const QString file = text(work_.file().string());
    QStringList files = settings_->value(QStringLiteral("recent/files")).toStringList();
    files.removeAll(file);
    files.prepend(file);
    while (files.size() > kMostRecent) {
        files.removeLast();
    }
    const plan::Plan& plan = work_.plan();
    settings_->setValue(QStringLiteral("recent/files"), files);
    const QString row = QStringLiteral("recent/") + QString::number(qHash(file, 0), 16);
    settings_->setValue(row + QStringLiteral("/name"), text(plan.heading().name));
    settings_->setValue(row + QStringLiteral("/words"),
                        tr("%1 films, %2 phases").arg(plan.films().size()).arg(plan.phases().size()));
    settings_->setValue(QStringLiteral("folder"), text(work_.folder().string()));
    renewRecent();
}

void Window::renewRecent() {
    std::vector<start::RecentPlan> plans;
    recentMenu_->clear();
    for (const QString& file : settings_->value(QStringLiteral("recent/files")).toStringList()) {
        if (!QFileInfo::exists(file)) {
            continue;
        }
        const QString row = QStringLiteral("recent/") + QString::number(qHash(file, 0), 16);
        plans.push_back({file, settings_->value(row + QStringLiteral("/name")).toString(),
                         settings_->value(row + QStringLiteral("/words")).toString()});
        QAction* action = recentMenu_->addAction(file);
        if (plans.size() <= 3) {
            action->setShortcut(QKeySequence(QStringLiteral("Alt+%1").arg(plans.size())));
        }
        connect(action, &QAction::triggered, this, [this, file] { openPlan(file.toStdString()); });
    }
    recentMenu_->setEnabled(!plans.empty());
    start_->setRecent(plans);
}

/// What a crash left with at least one step in it; journals of nothing are swept away.
void Window::renewLeftovers() {
    std::vector<files::Leftover> found = files::leftovers(outside_.state);
    std::erase_if(found, [](const files::Leftover& leftover) {
        std::error_code ignored;
        return leftover.edits == 0 && std::filesystem::remove(leftover.journal, ignored);
    });
    start_->setLeftovers(std::move(found));
}

void Window::takeUp(const files::Leftover& leftover) {
    const auto taken = work_.takeUp(leftover);
    if (!taken) {
        say(outside_.say(taken.error()));
        return;
    }
    say(tr("%1 steps taken up. Save keeps them.").arg(*taken));
}

void Window::draw(const std::string& kind) {
    if (!work_.isOpen() || !work_.workingFilm()) {
        say(tr("There is no film to draw on. Edit, New film makes one."));
        return;
    }
    if (const measures::Entry* entry = measures::find(kind)) {
        say({});
        work_.select(std::nullopt);
        detailsWanted_ = false;  // the table and the ledger are what a hand that draws needs
        arrange();
        table_->setTool(std::make_unique<tools::PlaceTool>(*entry));
        table_->setFocus();
    }
}

void Window::drawRoute(plan::Use use) {
    if (!work_.isOpen() || !work_.workingFilm()) {
        say(tr("There is no film to draw on. Edit, New film makes one."));
        return;
    }
    say({});
    work_.select(std::nullopt);
    detailsWanted_ = false;
    arrange();
    table_->setTool(std::make_unique<tools::RouteTool>(use));
    table_->setFocus();
}

void Window::removeSelected() {
    if (const auto item = work_.selected()) {
        work_.commit(plan::without(work_.committed(), *item), "wipe off");
    }
}

void Window::selectNext(int step) {
    std::vector<plan::ItemId> things;
    for (const plan::FilmPtr& film : work_.filmsOnTable()) {
        if (work_.look(film->id).shown) {
            for (const plan::Showing& showing : film->shows) {
                if (std::find(things.begin(), things.end(), showing.item) == things.end()) {
                    things.push_back(showing.item);
                }
            }
        }
    }
    if (things.empty()) {
        return;
    }
    const auto at = work_.selected() ? std::find(things.begin(), things.end(), *work_.selected()) : things.end();
    const auto count = static_cast<std::ptrdiff_t>(things.size());
    const std::ptrdiff_t now = at == things.end() ? (step > 0 ? -1 : 0) : at - things.begin();
    work_.select(things[static_cast<std::size_t>(((now + step) % count + count) % count)]);
}

void Window::newFilm() {
    std::set<int> phases;
    if (work_.phase() != 0) {
        phases.insert(work_.phase());
    }
    const std::string name = "FILM " + std::to_string(work_.plan().films().size() + 1);
    const Uuid id = work_.newId();
    work_.commit(plan::withFilm(work_.committed(), id, name, phases), "new film");
    work_.setWorkingFilm(id);
    renameFilm(id);
}

void Window::renameFilm(const plan::FilmId& film) {
    const plan::FilmPtr held = work_.plan().film(film);
    if (!held) {
        return;
    }
    bool given = false;
    const QString name =
        QInputDialog::getText(this, tr("Film"), tr("Name of the film:"), QLineEdit::Normal, text(held->name), &given);
    if (given && !name.trimmed().isEmpty() && name.trimmed().toStdString() != held->name) {
        plan::Film next = *held;
        next.name = name.trimmed().toStdString();
        plan::PlanBuilder builder(work_.committed());
        builder.put(std::move(next));
        work_.commit(std::move(builder).build(), "rename a film");
    }
}

void Window::setFilmPhases(const plan::FilmId& film, int phase, bool on) {
    const plan::FilmPtr held = work_.plan().film(film);
    if (!held) {
        return;
    }
    plan::Film next = *held;
    on ? static_cast<void>(next.phases.insert(phase)) : static_cast<void>(next.phases.erase(phase));
    plan::PlanBuilder builder(work_.committed());
    builder.put(std::move(next));
    work_.commit(std::move(builder).build(), "give a film its phases");
}

void Window::newPhase() {
    std::vector<plan::Phase> phases = work_.committed().phases();
    int number = 1;
    for (const plan::Phase& phase : phases) {
        number = std::max(number, phase.number + 1);
    }
    bool given = false;
    const QString name = QInputDialog::getText(this, tr("Phase %1").arg(number), tr("Name of the phase:"),
                                               QLineEdit::Normal, {}, &given);
    if (given) {
        phases.push_back({number, name.trimmed().toStdString(), {}, {}, {}});
        plan::PlanBuilder builder(work_.committed());
        builder.phases(std::move(phases));
        work_.commit(std::move(builder).build(), "new phase");
        work_.setPhase(number);
    }
}

/// The table as a map is held on the march: what lies ahead on the ledger's route is up.
void Window::turnToMarch() {
    const plan::RoutePtr route = work_.ledgerRoute();
    if (!route || route->vertices.size() < 2 || work_.grid() == nullptr) {
        say(tr("There is no route to march by. Draw one, or choose one."));
        return;
    }
    const auto from = work_.grid()->onGrid(route->vertices.front());
    const auto to = work_.grid()->onGrid(route->vertices.back());
    if (from && to) {
        const double east = (to->easting - from->easting).value();
        const double north = (to->northing - from->northing).value();
        table_->turnTo(degrees(Radians(std::atan2(east, north))));
    }
}

/// Window and ticks round what is drawn: they hold for all films, so films printed before no longer fit.
void Window::moveRegistration() {
    plan::PlanBuilder bare(work_.committed());
    bare.registration(std::nullopt);
    auto proposed = film::proposeRegistration(std::move(bare).build());
    if (!proposed) {
        say(outside_.say(proposed.error()));
        return;
    }
    plan::PlanBuilder builder(work_.committed());
    builder.registration(std::move(*proposed));
    work_.commit(std::move(builder).build(), "move ticks and window");
    say(tr("Ticks and window now lie round what is drawn. Films that were printed before no longer fit these."));
}

void Window::showCopies(bool shown) {
    if (!work_.isOpen()) {
        return;
    }
    pages_->setCurrentWidget(shown ? static_cast<QWidget*>(copies_) : desk_);
    if (shown) {
        copies_->open();
        copies_->setFocus();
    } else {
        table_->setFocus();
    }
}

}  // namespace crosstick::window
