// How plans come to the table and are kept: opened, begun, saved, laid away, taken up after a crash.
#include <algorithm>

#include <QFileDialog>
#include <QSettings>

#include "core/film/new_plan.h"
#include "core/geodesy/grid_reference.h"
#include "core/plan/edits.h"
#include "core/sheets/faults.h"
#include "core/sheets/sheet_file.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

constexpr int kMostRecent = 8;
constexpr int kMostKeys = 3;  ///< recent plans with a key of their own

using work::Course;
using work::GivingUp;
using work::Lane;

QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

plan::Heading freshHeading(Instant now, const std::string& name, const settings::Choices& choices) {
    plan::Heading heading;
    heading.name = name;
    heading.marking = choices.marking.toStdString();
    heading.author = choices.author.toStdString();
    heading.unit = choices.unit.toStdString();
    heading.zone = timeZone(choices.zone).value_or(TimeZone{});
    if (!(choices.gauge == drawing::Gauge{})) {
        heading.gauge = choices.gauge;
    }
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

/// What lies on the desk besides plans that are open.
struct Found {
    std::vector<files::Leftover> leftovers;
    QStringList gone;  ///< recent plans that are not there any more
};

Found lookOnDesk(const std::filesystem::path& state, const QStringList& recent) {
    Found found;
    found.leftovers = files::leftovers(state);
    std::erase_if(found.leftovers, [](const files::Leftover& leftover) {  // journals of nothing are swept away
        std::error_code ignored;
        return leftover.edits == 0 && std::filesystem::remove(leftover.journal, ignored);
    });
    std::copy_if(recent.begin(), recent.end(), std::back_inserter(found.gone),
                 [](const QString& file) { return !QFileInfo::exists(file); });
    return found;
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
    say({});
    work_.open(file, [this](const Result<void>& opened) { takeOpened(opened); });
}

void Window::takeOpened(const Result<void>& opened) {
    if (opened) {
        comes_ = false;
        return remember();
    }
    nothingComes();
    say(outside_.say(opened.error()));
}

/// The plan that the window was to begin with does not come: there are other ways to begin.
void Window::nothingComes() {
    if (std::exchange(comes_, false) && !work_.isOpen()) {
        pages_->setCurrentWidget(&*start_);
    }
}

void Window::askForSheet() {
    const QString file = QFileDialog::getOpenFileName(
        this, tr("Lay a map sheet"), settings_->value(QStringLiteral("folder")).toString(), sheetKinds());
    if (!file.isEmpty()) {
        openSheet(file.toStdString());
    }
}

void Window::openSheet(const std::filesystem::path& file, const sheets::GivenFacts& given) {
    readSheet(file, given,
              [this](const std::filesystem::path& read, plan::Sheet sheet) { laySheet(read, std::move(sheet)); });
}

/// The sheet is looked through on another thread: its checksum reads the whole file.
void Window::readSheet(const std::filesystem::path& file, const sheets::GivenFacts& given, const SheetTaker& then) {
    say({});
    const Uuid id = work_.newId();
    work_.errands().run(
        Lane::Makings, tr("Reading %1").arg(text(file.filename().string())), GivingUp::Allowed,
        [file, given, id, reader = work_.reader()](Course& course) {
            sheets::Watch watch;
            watch.isStopped = [&course] { return course.isStopped(); };
            return sheets::describeSheet(reader, file, id, given, watch);
        },
        [this, file, given, then](Result<plan::Sheet> sheet) {
            if (sheet) {
                then(file, std::move(*sheet));
            } else {
                askAboutSheet(file, given, then, sheet.error());
            }
        });
}

/// What a file does not say stands on the sheet itself: it is asked for, once.
void Window::askAboutSheet(const std::filesystem::path& file, const sheets::GivenFacts& given, const SheetTaker& then,
                           const Error& fault) {
    if (fault.fault == sheets::kNoScale && !given.scale) {
        askForScale(tr("The file does not say its scale. It is printed on the sheet: 1 to"),
                    [this, file, given, then](Scale printed) {
                        readSheet(file, {printed, given.crs}, then);
                    });
    } else if (fault.fault == sheets::kNoCrs && given.crs.empty()) {
        askForSheetGrid([this, file, given, then](const std::string& crs) {
            readSheet(file, {given.scale, crs}, then);
        });
    } else if (fault.fault == sheets::kNoPlacement) {
        registerScan(file, given);
    } else {
        say(outside_.say(fault));
    }
}

/// By its number in the EPSG register, which a sheet's margin or its publisher names.
void Window::askForSheetGrid(std::function<void(const std::string&)> then) {
    question_->ask(tr("The file does not say in which grid it lies. Its EPSG number:"), QStringLiteral("32632"),
                   [then = std::move(then)](QString answer) -> std::optional<QString> {
                       answer.remove(QStringLiteral("EPSG:"), Qt::CaseInsensitive);
                       const std::string crs = "EPSG:" + answer.trimmed().toStdString();
                       if (!geodesy::describeCrs(crs)) {
                           return tr("No grid in metres or feet has that number.");
                       }
                       then(crs);
                       return std::nullopt;
                   });
}

QString Window::sheetKinds() {
    return tr("Map sheets (*.tif *.tiff *.png *.jpg *.jpeg *.bmp *.webp *.pdf);;All files (*)");
}

void Window::laySheet(const std::filesystem::path& file, plan::Sheet sheet) {
    const std::string name = sheet.name.empty() ? file.stem().string() : sheet.name;
    const std::filesystem::path whole = std::filesystem::absolute(file);
    sheet.path = whole.string();
    if (!sheet.elevationPath.empty()) {
        sheet.elevationPath = (whole.parent_path() / sheet.elevationPath).string();
    }
    auto plan = film::planOnSheet(std::move(sheet), freshHeading(outside_.now(), name, settings::read(*settings_)),
                                  work_.newId());
    if (!plan) {
        say(outside_.say(plan.error()));
        return;
    }
    begin(*plan, file.parent_path());
}

void Window::begin(const plan::Plan& plan, const std::filesystem::path& folder) {
    say({});
    work_.begin(withFirstFilm(plan, work_.newId()), std::filesystem::absolute(folder));
}

void Window::askForScale(const QString& words, std::function<void(Scale)> then) {
    question_->ask(words, QStringLiteral("25000"), [then = std::move(then)](QString answer) -> std::optional<QString> {
        constexpr double kLeast = 1000;
        constexpr double kMost = 1000000;
        answer.remove(QLatin1Char(' ')).remove(QLatin1Char(',')).remove(QLatin1String("1:"));
        bool isNumber = false;
        const double number = answer.toDouble(&isNumber);
        if (!isNumber || number < kLeast || number > kMost) {
            return tr("A number from 1000 to 1000000, as the sheet prints it behind \"1:\".");
        }
        then(Scale{number});
        return std::nullopt;
    });
}

void Window::askForGrid() {
    question_->ask(tr("A grid near the middle of the ground, such as 25T FL 54 97:"), {},
                   [this](const QString& answer) -> std::optional<QString> {
                       const auto reference = geodesy::parsePoint(answer.toStdString());
                       if (!reference) {
                           return outside_.say(reference.error());
                       }
                       askForScale(tr("Scale of the sheet in your hand: 1 to"), [this, at = *reference](Scale scale) {
                           begin(film::planOnGrid(at.southWest, scale,
                                                  freshHeading(outside_.now(), tr("New plan").toStdString(),
                                                               settings::read(*settings_)),
                                                  work_.newId()),
                                 std::filesystem::current_path());
                       });
                       return std::nullopt;
                   });
}

void Window::openDemo() {
    say({});
    actions_.at("demo")->setEnabled(false);
    work_.errands().run(
        Lane::Makings, tr("Making the demo island"), GivingUp::Allowed,
        [demo = outside_.demo](Course& course) { return demo(course); },
        [this](const Result<std::filesystem::path>& made) {
            actions_.at("demo")->setEnabled(true);
            made ? openPlan(*made) : say(outside_.say(made.error()));
        },
        [this] { actions_.at("demo")->setEnabled(true); });
}

void Window::save() {
    if (work_.file().empty() && !work_.isSaving()) {
        askAndSaveAs();
        return;
    }
    work_.save(outside_.now(), [this](const Result<void>& saved) { tellSaved(saved); });
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
    work_.saveAs(file, outside_.now(), [this](const Result<void>& saved) { tellSaved(saved); });
}

void Window::tellSaved(const Result<void>& saved) {
    if (saved) {
        say(tr("Saved: %1").arg(text(work_.file().string())));
        remember();
    } else {
        next_ = Next::GoOn;  // who wanted to leave reads this first
        say(outside_.say(saved.error()) + QLatin1Char(' ') + tr("Plan, Save as writes it elsewhere."));
    }
}

/// Now, or when what is being written has come to pass; not where it failed.
void Window::leave(Next next) {
    next_ = next;
    if (next == Next::Close && isWritingCopies()) {
        say(tr("Copies are being written. The window closes when that is done."));
        return;  // it is asked again when they are
    }
    if (work_.isSaving()) {
        say(next == Next::Close ? tr("The plan is being saved. The window closes when that is done.")
                                : tr("The plan is being saved. It is laid away when that is done."));
    }
    work_.whenSaved([this, next] {
        if (next_ != next) {
            return;
        }
        next_ = Next::GoOn;
        if (next == Next::Close) {
            close();
        } else {
            layAway();
        }
    });
}

void Window::layAway() {
    say({});
    work_.close();
    renewGround();
    pages_->setCurrentWidget(&*start_);
    renewLeftovers();
    rail_->renew();
    arrange();
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
    goneFiles_.removeAll(file);
    renewRecent();
}

void Window::renewRecent() {
    std::vector<start::RecentPlan> plans;
    recentMenu_->clear();
    for (const QString& file : settings_->value(QStringLiteral("recent/files")).toStringList()) {
        if (goneFiles_.contains(file)) {
            continue;
        }
        const QString row = QStringLiteral("recent/") + QString::number(qHash(file, 0), 16);
        plans.push_back({file, settings_->value(row + QStringLiteral("/name")).toString(),
                         settings_->value(row + QStringLiteral("/words")).toString()});
        const QString& name = plans.back().name;
        QString words = name.isEmpty() ? file : tr("%1, %2").arg(name, file);
        QAction* action = recentMenu_->addAction(words.replace(QLatin1Char('&'), QStringLiteral("&&")));
        if (plans.size() <= kMostKeys) {
            action->setShortcut(QKeySequence(QStringLiteral("Alt+%1").arg(plans.size())));
        }
        connect(action, &QAction::triggered, this, [this, file] { openPlan(file.toStdString()); });
    }
    recentMenu_->setEnabled(!plans.empty());
    recent_ = std::move(plans);
    start_.ifMade([this](auto& page) { page.setRecent(recent_); });
}

/// What a crash left, and which recent plans are still there: read on another thread, since a folder may be slow.
void Window::renewLeftovers() {
    work_.errands().run(
        Lane::Makings, tr("Looking for unsaved work"), GivingUp::Allowed,
        [state = outside_.state, recent = settings_->value(QStringLiteral("recent/files")).toStringList()](Course&) {
            return lookOnDesk(state, recent);
        },
        [this](Found found) {
            leftovers_ = std::move(found.leftovers);
            start_.ifMade([this](auto& page) { page.setLeftovers(leftovers_); });
            goneFiles_ = found.gone;
            renewRecent();
        });
}

void Window::takeUp(const files::Leftover& leftover) {
    work_.takeUp(leftover, [this](const Result<std::size_t>& taken) {
        say(taken ? tr("%1 steps taken up. Save keeps them.").arg(*taken) : outside_.say(taken.error()));
    });
}

}  // namespace crosstick::window
