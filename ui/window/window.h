#pragma once

#include <functional>
#include <map>
#include <set>

#include <QMainWindow>
#include <QMenu>
#include <QStackedWidget>

#include "core/sheets/sheet_file.h"
#include "core/terrain/follow.h"
#include "core/terrain/handrail.h"
#include "ui/brief/brief_view.h"
#include "ui/copies/copies.h"
#include "ui/details/details.h"
#include "ui/ledger/ledger.h"
#include "ui/look/dimmer.h"
#include "ui/look/theme.h"
#include "ui/march/march_sill.h"
#include "ui/phases/rail.h"
#include "ui/registering/register_page.h"
#include "ui/settings/settings_page.h"
#include "ui/start/start_page.h"
#include "ui/table/light_table.h"
#include "ui/window/actions_card.h"
#include "ui/window/doing_mark.h"
#include "ui/window/help_page.h"
#include "ui/window/notices.h"
#include "ui/window/question.h"
#include "ui/work/work.h"

class QHBoxLayout;
class QMenuBar;
class QSettings;

namespace crosstick::window {

/// What the window takes from the world, handed in, so that a test can give its own.
struct Outside {
    std::filesystem::path share;        ///< faces, coefficients
    std::filesystem::path state;        ///< journals
    std::filesystem::path settings;     ///< file of the window's own choices
    sheets::ForeignReader reader = {};  ///< of map sheets and height models
    std::uint64_t seed = 0;
    std::function<Instant()> now;
    std::function<QString(const Error&)> say;  ///< one clear line for a fault
    /// Makes the demo where it is not there yet and gives its plan; runs on a thread of its own.
    std::function<Result<std::filesystem::path>(work::Course&)> demo;
    QString version;
    std::function<void()> beforeErrand = {};  ///< called on another thread before whatever is done there
};

/// The window: head with menus and rail, the light table, sill, card. Holds the parts together and nothing else: the
/// plan is the work's, each part does its own.
class Window final : public QMainWindow {
    Q_OBJECT

  public:
    explicit Window(Outside outside, QWidget* parent = nullptr);
    ~Window() override;
    /// The end of whatever runs: what is being saved is saved, what only reads is given up. A thread that hangs in a
    /// read is left behind: the process is then to end without taking anything down under it.
    work::Ending end();

    void openPlan(const std::filesystem::path& file);
    void openSheet(const std::filesystem::path& file, const sheets::GivenFacts& given = {});
    void setLight(look::Light light);
    /// How far the night light is dimmed: 1 to look::Dimmer::kLevels. By day nothing is.
    void setDimming(int level);
    /// What a file dropped on the window is for: a plan is taken up, a sheet or scan laid, GeoJSON drawn on the working
    /// film; anything else is answered in words.
    void takeFile(const std::filesystem::path& file);
    void say(const QString& words);
    [[nodiscard]] work::Work& work() { return work_; }
    [[nodiscard]] table::LightTable& table() { return *table_; }
    [[nodiscard]] copies::Copies& copies() { return *copies_; }
    [[nodiscard]] registering::RegisterPage& registerPage() { return *register_; }
    /// Lays a scan or photo on its grid by hand; then it is a new plan's sheet, or one more of the present plan.
    void registerScan(const std::filesystem::path& file, const sheets::GivenFacts& given = {});
    [[nodiscard]] const std::map<std::string, QAction*>& actionsByName() const { return actions_; }
    void run(const std::string& action);  ///< by its name, as a menu would
    void saveTo(const std::filesystem::path& file);
    /// A sheet of the plan was moved there; none named: the first.
    void sheetIsAt(const std::filesystem::path& file, std::optional<plan::SheetId> which = std::nullopt);
    /// Lays one more sheet into the plan, cropped where its map ends.
    void layBeside(const std::filesystem::path& file, const sheets::GivenFacts& given = {});
    void cropAtNeatline(const plan::SheetId& sheet);
    void holdNeatline(const plan::SheetId& sheet);
    [[nodiscard]] const Notices& notices() const { return *notices_; }
    [[nodiscard]] const DoingMark& doing() const { return *doing_; }
    [[nodiscard]] const Question& question() const { return *question_; }
    [[nodiscard]] brief::BriefView& briefView() { return *brief_; }

  protected:
    void closeEvent(QCloseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    void changeEvent(QEvent* event) override;

  private:
    Outside outside_;
    std::unique_ptr<QSettings> settings_;
    work::Work work_;
    look::Light light_ = look::Light::Day;
    look::Dimmer dimmer_;
    int dimming_ = look::Dimmer::kLevels;  ///< by night
    bool bare_ = false, ledgerHidden_ = false, detailsWanted_ = false, marchWanted_ = false, ledgerAsks_ = false;
    QWidget* head_;
    QMenuBar* bar_ = nullptr;
    QMenu* folded_ = nullptr;
    QHBoxLayout* across_ = nullptr;
    phases::Rail* rail_;
    QStackedWidget* pages_;
    start::StartPage* start_;
    QWidget* desk_;
    table::LightTable* table_;
    ledger::Ledger* ledger_;
    march::MarchSill* march_;
    QStackedWidget* cards_;  ///< at the side, one at a time
    details::Details* details_;
    ActionsCard* actionsCard_;
    bool actionsWanted_ = false;
    copies::Copies* copies_;
    registering::RegisterPage* register_;
    settings::SettingsPage* settingsPage_;
    HelpPage* help_;
    QWidget* beforePage_ = nullptr;      ///< that settings or help lie over
    QWidget* beforeRegister_ = nullptr;  ///< the page to go back to
    QWidget* foot_;                      ///< what the window says and asks
    Notices* notices_ = nullptr;
    Question* question_;
    DoingMark* doing_;
    brief::BriefView* brief_;
    std::map<std::string, QAction*> actions_;
    QMenu* recentMenu_ = nullptr;
    std::set<std::filesystem::path> sought_;  ///< sheets that were looked for, where they had been
    QMenu* sheetsMenu_ = nullptr;
    QStringList goneFiles_;  ///< recent plans that are not where they were
    enum class Next { GoOn, LayAway, Close };
    Qt::WindowStates beforeBrief_;
    Next next_ = Next::GoOn;  ///< what is wanted once a save has come to pass

    [[nodiscard]] look::Weight letters() const;  ///< of ordinary text, in this light
    void stepDimmer();

    void drawFrom(const std::filesystem::path& file);

    // Parts and how they lie.
    void buildParts();
    void connectParts();
    void connectWork();
    void connectTable();
    void connectPages();
    void arrange();
    void fitMenus();
    void foldMenus(bool fold);            ///< into one button, or out of it
    void layCard();                       ///< over the table on a small screen, else beside it
    void placeCard();                     ///< where it lies over the table
    [[nodiscard]] bool isNarrow() const;  ///< a small screen, or one at 200 %
    /// The block of an order of march that is chosen; null where something else is, or nothing.
    [[nodiscard]] plan::MeasurePtr chosenMarch() const;
    void renewHead();
    void renewRecent();

    // Menus (menus.cc).
    using Does = std::function<void()>;
    QAction* add(QMenu* menu, const std::string& name, const QString& words, const QKeySequence& key, Does does);
    void buildMenus(QMenuBar* bar);
    void buildPlanMenu(QMenuBar* bar);
    void buildEditMenu(QMenuBar* bar);
    void buildViewMenu(QMenuBar* bar);
    void buildDrawMenu(QMenuBar* bar);
    void buildMakeMenu(QMenuBar* bar);
    void showThingMenu(const QPoint& at);
    void showFilmMenu(const plan::FilmId& film, const QPoint& at);
    /// How a thing lies on the working film: its symbol and label back in their places, its row, its extension line.
    void addPlacings(QMenu& menu, const plan::ItemId& item);
    void addRows(QMenu& menu, const plan::Film& film, const plan::Measure& unit);
    void addEnds(QMenu& menu, const plan::Film& film, const plan::Showing& showing);
    void fillFilmMenu(QMenu& menu, const plan::FilmId& film);

    // How plans come and are kept (plans.cc).
    void askForPlan();
    void askForSheet();
    using SheetTaker = std::function<void(const std::filesystem::path&, plan::Sheet)>;
    void readSheet(const std::filesystem::path& file, const sheets::GivenFacts& given, const SheetTaker& then);
    void askAboutSheet(const std::filesystem::path& file, const sheets::GivenFacts& given, const SheetTaker& then,
                       const Error& fault);
    void askForSheetGrid(std::function<void(const std::string&)> then);
    void laySheet(const std::filesystem::path& file, plan::Sheet sheet);
    void askForGrid();
    void askForScale(const QString& words, std::function<void(Scale)> then);
    void openDemo();
    void save();
    void askAndSaveAs();
    void tellSaved(const Result<void>& saved);
    void leave(Next next);
    void layAway();
    void begin(const plan::Plan& plan, const std::filesystem::path& folder);
    void remember();
    void renewLeftovers();
    void takeUp(const files::Leftover& leftover);

    // Faults of the ground (ground_notices.cc).
    void renewGround();
    [[nodiscard]] Notices::Deed lookAgain();
    void tellOfHeights();
    void tellOfSheet();
    void tellOfDatum();
    void setHeightUnit(plan::HeightUnit unit);
    void seekSheet(const plan::SheetPtr& sheet);
    void carrySheets();
    void carryNoSheets();
    /// What the file dialog offers as map sheets.
    [[nodiscard]] static QString sheetKinds();
    void findSheet(const plan::SheetId& sheet);
    void findHeights();

    // The plan's sheets (sheet_deeds.cc).
    void askForSheetBeside();
    void askForScan();
    void laidByHand(const std::filesystem::path& file, const plan::Sheet& sheet);
    void leaveRegister();
    void fillSheetsMenu();
    void fillSheetMenu(QMenu& menu, const plan::Sheet& sheet);
    void addSheet(const std::filesystem::path& file, plan::Sheet sheet);
    void showAllOf(const plan::SheetId& sheet);
    void takeAway(const plan::SheetId& sheet);
    void layAsFilm(const plan::SheetId& sheet, std::optional<double> strength);
    void tellOfSeams();

    // What the menus do (deeds.cc).
    void draw(const std::string& kind);
    void drawRoute(plan::Use use);
    // What is read off the printed sheet (follow_deeds.cc).
    void followMap(std::optional<terrain::Side> rail);
    void seekPrinted(geodesy::PlanePoint from, geodesy::PlanePoint to, const std::optional<terrain::Vein>& like,
                     const std::function<void(Result<terrain::FollowedGround>)>& then);
    void tieSelected();
    void askForTie(const plan::ItemId& point, geodesy::PlanePoint thing);
    void removeSelected();
    void selectNext(int step);
    void newFilm();
    void renameFilm(std::optional<plan::FilmId> film);
    void setFilmPhases(const plan::FilmId& film, int phase, bool on);
    void newPhase();
    void askForStretch();
    void askForSizes(std::optional<plan::FilmId> film);
    void turnToMarch();
    void moveRegistration();
    void askForTicks();
    void askForWindow();
    void holdRegistration();
    void keepRegistration(const plan::Registration& next);
    [[nodiscard]] Result<std::vector<geodesy::PlanePoint>> gridsTyped(const QString& typed) const;
    [[nodiscard]] QString gridsToType(const std::vector<geodesy::PlanePoint>& onGrid) const;
    void showCopies(bool shown);
    void showPage(QWidget& page);
    void leavePage();
    void showPlanCard();
    [[nodiscard]] QList<QAction*> allMenus() const;
    void showActions();
    void leaveActions();
    void take(const settings::Choices& choices);
    void beginBrief();
    void endBrief();
};

}  // namespace crosstick::window
