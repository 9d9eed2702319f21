#pragma once

#include <functional>
#include <map>
#include <set>

#include <QMainWindow>
#include <QMenu>
#include <QStackedWidget>

#include "core/drafting/bearing.h"
#include "core/drafting/wipe_edits.h"
#include "core/plan/next_phase.h"
#include "core/plan/traces.h"
#include "core/sheets/sheet_file.h"
#include "core/terrain/follow.h"
#include "core/terrain/handrail.h"
#include "ui/brief/brief_view.h"
#include "ui/copies/copies.h"
#include "ui/details/details.h"
#include "ui/ledger/ledger.h"
#include "ui/look/dimmer.h"
#include "ui/look/theme.h"
#include "ui/march/tables_sill.h"
#include "ui/phases/offer_card.h"
#include "ui/phases/phase_board.h"
#include "ui/phases/rail.h"
#include "ui/registering/register_page.h"
#include "ui/settings/settings_page.h"
#include "ui/start/start_page.h"
#include "ui/table/light_table.h"
#include "ui/timing/timing_card.h"
#include "ui/tools/registration_tool.h"
#include "ui/tray/tray.h"
#include "ui/window/actions_card.h"
#include "ui/window/doing_mark.h"
#include "ui/window/help_page.h"
#include "ui/window/later.h"
#include "ui/window/notices.h"
#include "ui/window/question.h"
#include "ui/work/work.h"

class QHBoxLayout;
class QMenuBar;
class QSettings;
class QVBoxLayout;

namespace crosstick::window {

class HeldKey;

/// What the window takes from the world, handed in, so that a test can give its own.
struct Outside {
    std::filesystem::path plan;         ///< taken up while the window is made; empty: the start page is
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
    /// @param before  the sheet of the plan that it is already, to be laid anew from its marks
    void registerScan(const std::filesystem::path& file, const sheets::GivenFacts& given = {},
                      const plan::SheetPtr& before = nullptr);
    void registerAnew(const plan::SheetId& sheet);
    /// The plan's ticks are those of somebody's film from now on.
    void takeTicksOf(const plan::SheetId& film);
    [[nodiscard]] const std::map<std::string, QAction*>& actionsByName() const { return actions_; }
    void run(const std::string& action);  ///< by its name, as a menu would
    void saveTo(const std::filesystem::path& file);
    /// A sheet of the plan was moved there; none named: the first.
    void sheetIsAt(const std::filesystem::path& file, std::optional<plan::SheetId> which = std::nullopt);
    /// Lays one more sheet into the plan, cropped where its map ends.
    void layBeside(const std::filesystem::path& file, const sheets::GivenFacts& given = {});
    void cropAtNeatline(const plan::SheetId& sheet);
    void holdNeatline(const plan::SheetId& sheet);
    [[nodiscard]] tray::Tray& tray() { return *tray_; }
    [[nodiscard]] const Notices& notices() const { return *notices_; }
    [[nodiscard]] const DoingMark& doing() const { return *doing_; }
    [[nodiscard]] const Question& question() const { return *question_; }
    [[nodiscard]] const phases::OfferCard& offers() const { return *offers_; }
    [[nodiscard]] brief::BriefView& briefView() { return *brief_; }
    [[nodiscard]] march::TablesSill& tables() { return *tables_; }
    [[nodiscard]] timing::TimingCard& timing() { return *timing_; }
    [[nodiscard]] settings::SettingsPage& settingsPage() { return *settingsPage_; }
    [[nodiscard]] HelpPage& helpPage() { return *help_; }

  protected:
    void showEvent(QShowEvent* event) override;
    void closeEvent(QCloseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    void changeEvent(QEvent* event) override;

  private:
    Outside outside_;
    std::unique_ptr<QSettings> settings_;
    std::optional<press::Faces> faces_;  ///< of all that is lettered here; none where the files are missing
    work::Work work_;
    look::Light light_ = look::Light::Day;
    look::Dimmer dimmer_;
    int dimming_ = look::Dimmer::kLevels;  ///< by night
    bool bare_ = false, ledgerHidden_ = false, detailsWanted_ = false, marchWanted_ = false, ledgerAsks_ = false;
    bool railDown_ = false;
    bool comes_ = false;  ///< the plan that the window begins with is on its way
    bool timingWanted_ = false, driftWanted_ = false;
    QWidget* head_;
    QMenuBar* bar_ = nullptr;
    QMenu* folded_ = nullptr;
    QHBoxLayout* across_ = nullptr;
    QVBoxLayout* down_ = nullptr;
    phases::Rail* rail_;
    phases::PhaseBoard* board_;
    QStackedWidget* pages_;
    Later<start::StartPage> start_;
    std::vector<start::RecentPlan> recent_;
    std::vector<files::Leftover> leftovers_;
    QWidget* desk_;
    table::LightTable* table_;
    ledger::Ledger* ledger_;
    Later<march::TablesSill> tables_;
    QStackedWidget* cards_;  ///< at the side, one at a time
    details::Details* details_;
    phases::OfferCard* offers_;
    Later<timing::TimingCard> timing_;
    ActionsCard* actionsCard_;
    bool actionsWanted_ = false;
    std::unique_ptr<QMenu> chosenMenu_;  ///< the menu of what is chosen, as the list of doings has it
    tray::Tray* tray_;
    bool trayWanted_ = false;
    Later<copies::Copies> copies_;
    Later<registering::RegisterPage> register_;
    Later<settings::SettingsPage> settingsPage_;
    Later<HelpPage> help_;
    QWidget* beforePage_ = nullptr;      ///< that settings or help lie over
    QWidget* beforeRegister_ = nullptr;  ///< the page to go back to
    QWidget* foot_;                      ///< what the window says and asks
    Notices* notices_ = nullptr;
    Question* question_;
    DoingMark* doing_;
    brief::BriefView* brief_;
    std::map<std::string, QAction*> actions_;
    HeldKey* lift_ = nullptr;
    QMenu* recentMenu_ = nullptr;
    std::set<std::filesystem::path> sought_;  ///< sheets that were looked for, where they had been
    QMenu* sheetsMenu_ = nullptr;
    QStringList goneFiles_;  ///< recent plans that are not where they were
    enum class Next { GoOn, LayAway, Close };
    Qt::WindowStates beforeBrief_;
    std::optional<plan::ItemId> stroke_;  ///< drawn just now and not yet said what it is
    Metres handrail_ = terrain::kUsualHandrail;
    bool drawnFirst_ = false;  ///< what is drawn is followed before what is printed
    Next next_ = Next::GoOn;   ///< what is wanted once a save has come to pass

    [[nodiscard]] look::Weight letters() const;  ///< of ordinary text, in this light
    void stepDimmer();

    void drawFrom(const std::filesystem::path& file);

    // Parts and how they lie.
    void buildParts();
    void buildHead();
    void buildDesk();
    void buildPages();
    void layTables();  ///< how tables and times are made, when they are first wanted
    void layPages();   ///< and the pages
    void layStart();
    void connectStart(const start::StartPage& page);
    void takeOpened(const Result<void>& opened);
    void nothingComes();
    /// A part made now, in the light of now.
    template <typename Part>
    Part* lit(Part* part) const {
        part->setLight(light_);
        return part;
    }
    [[nodiscard]] const press::Faces* faces() const { return faces_ ? &*faces_ : nullptr; }
    [[nodiscard]] march::TablesSill::Page tablesPage() const;
    void connectParts();
    void connectWork();
    void connectTable();
    void connectPages();
    void connectTray();
    void connectCopies(const copies::Copies& copies);
    [[nodiscard]] bool isWritingCopies() const { return copies_.made() != nullptr && copies_.made()->isWriting(); }
    void arrange();
    void fitMenus();
    void foldMenus(bool fold);            ///< into one button, or out of it
    [[nodiscard]] QWidget* cardWanted();  ///< null: none
    void layCard();                       ///< over the table on a small screen, else beside it
    void placeCard();                     ///< where it lies over the table
    void placeBoard();
    void layBoard();
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
    void addToolMenu(QMenu* draw);
    void addSnapMenu(QMenu* draw);
    void buildMakeMenu(QMenuBar* bar);
    void showThingMenu(const QPoint& at);
    void fillThingMenu(QMenu& menu, const QPoint& at);  ///< of what is chosen; @param at  of the screen
    void showFilmMenu(const plan::FilmId& film, const QPoint& at);
    /// How a thing lies on the working film: its symbol and label back in their places, its row, its extension line.
    void addPlacings(QMenu& menu, const plan::ItemId& item);
    void addRows(QMenu& menu, const plan::Film& film, const plan::Measure& unit);
    void addEnds(QMenu& menu, const plan::Film& film, const plan::Showing& showing);
    // Films and how they lie (film_menus.cc).
    void buildFilmsMenu(QMenu* view);
    void fillFilmMenu(QMenu& menu, const plan::FilmId& film);
    void fillLooks(QMenu& menu, const plan::FilmId& film);
    void rollRail();
    [[nodiscard]] std::vector<phases::Deed> railDeeds();
    void layAlone();
    void turnPin(const plan::FilmId& film);
    void turnShown(const plan::FilmId& film);
    void fade(const plan::FilmId& film, work::Fading by);
    void setTint(const plan::FilmId& film, work::Tint tint);
    [[nodiscard]] bool hasFilmToDrawOn();  ///< else it is said why there is none

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
    void layAnew(const plan::Sheet& before, const std::filesystem::path& file, plan::Sheet sheet);
    void leaveRegister();
    void fillSheetsMenu();
    void fillSheetMenu(QMenu& menu, const plan::Sheet& sheet);
    void addSheet(const std::filesystem::path& file, plan::Sheet sheet);
    void showAllOf(const plan::SheetId& sheet);
    void takeAway(const plan::SheetId& sheet);
    void layAsFilm(const plan::SheetId& sheet, std::optional<double> strength);
    void tellOfSeams();

    // The measure tray (tray_deeds.cc).
    void openTray();
    void layTrayAway();
    void raiseTray();
    // Numbers and papers given out (number_deeds.cc).
    void renumber();
    void giveOut(plan::Issue issue);
    void setInserted(plan::Inserted inserted);
    // What goes by way of the clipboard, and back to a step (clipboard_deeds.cc, step_deeds.cc).
    enum class Where { UnderTheHand, Aside, SamePlace };
    void copy();
    void paste(Where where);
    void duplicate();
    void layInto(const plan::Plan& what, Where where, const std::string& caption);
    void fillSteps(QMenu& menu, std::size_t upTo);
    void showSteps();

    // What the menus do (deeds.cc).
    void draw(const std::string& kind);
    void drawRoute(plan::Use use);
    // The hand's tools (tool_deeds.cc).
    void takeTool(std::unique_ptr<tools::Tool> tool);
    [[nodiscard]] Scale workingScale() const;
    void drawFreehand();
    void wipePart();
    void wipeRegion();
    void wipeFilm();
    void askToWipe(const drafting::Wiping& wiping, const std::string& caption);
    void endOnAnother();
    void measure();
    void askForPolar();
    void askForPolarFrom(geodesy::PlanePoint from);
    enum class Sighted { FromTheKnown, FromTheUnknown };
    void fixPoint(Sighted from);
    void keepPoint(geodesy::PlanePoint at, const std::string& caption);
    [[nodiscard]] Result<drafting::Norths> northsAt(geodesy::PlanePoint inPlan) const;
    [[nodiscard]] Result<geodesy::PlanePoint> polarPlace(geodesy::PlanePoint from, const std::string& typed) const;
    [[nodiscard]] tools::GridWays gridWays();
    bool strokeBecomes(const measures::Entry& kind);
    void become(const measures::Entry& kind);
    void addBecomings(QMenu& menu);
    // Whole routes (route_deeds.cc).
    void addRouteDeeds(QMenu* menu);
    /// Where a route is chosen, or a point of one.
    /// @param at  of the screen
    void addRouteDeedsHere(QMenu& menu, const QPoint& at);
    /// The route that is chosen, or that a chosen point sits on; null, with a word to the user, where there is none.
    [[nodiscard]] plan::RoutePtr routeInHand();
    void showARoute();
    void reverseRoute();
    void splitRoute(std::optional<geodesy::PlanePoint> at);
    void joinRoute();
    void swapRoute();
    void chooseLeg(const plan::ItemId& point);
    // Tables in the sill, and how far a navigator may drift (table_deeds.cc).
    void addMarchDeeds(QMenu* menu);
    void addTableDeeds(QMenu* menu);
    void turnToPage(march::TablesSill::Page page);
    void connectTables(march::TablesSill& tables);
    void renewDrift();
    void tellOfDrift();
    // What is read off the printed sheet (follow_deeds.cc).
    enum class Following { TheLine, InsideOurBoundary, OnTheLeft, OnTheRight };
    void followMap(Following what);
    void askForHandrail();
    bool seekDrawn(geodesy::PlanePoint from, geodesy::PlanePoint to,
                   const std::function<void(Result<terrain::FollowedGround>)>& then);
    void seekPrinted(geodesy::PlanePoint from, geodesy::PlanePoint to, const std::optional<terrain::Vein>& like,
                     const std::function<void(Result<terrain::FollowedGround>)>& then);
    void tieSelected();
    /// Clicks along the ledger's route tell where it crosses contours, whose heights are typed.
    void readContours();
    void askForHeight(const plan::ItemId& route, geodesy::PlanePoint onRoute);
    void askForTie(const plan::ItemId& point, geodesy::PlanePoint thing);
    void removeSelected();
    void chooseAll();
    void selectNext(int step);
    void newFilm();
    void renameFilm(std::optional<plan::FilmId> film);
    void setFilmPhases(const plan::FilmId& film, int phase, bool on);
    void newPhase();
    void askForStretch();
    // From phase to phase (phase_deeds.cc).
    void startNextPhase();
    [[nodiscard]] std::optional<QString> takeNextPhase(plan::NextPhase next, const std::vector<std::size_t>& order,
                                                       const phases::OfferCard::Answer& answer);
    void joinWithNextPhase();
    void partPhases();
    // Insets (inset_deeds.cc).
    void drawInset();
    void takeInset(geodesy::PlanePoint corner, geodesy::PlanePoint opposite);
    void askForInset();
    // What is shown on further films, and traced from higher's (trace_deeds.cc).
    void showHere();
    void showOn(const plan::FilmId& film, bool shown);
    void fillShownOn(QMenu& menu);
    void askForFilms();
    void trace();
    void takeTraces(const std::vector<plan::TraceOrder>& orders, const std::string& caption);
    void offerTraces(geodesy::PlanePoint corner, geodesy::PlanePoint opposite);
    void renewTraces();
    void tellOfTraces();
    void askForSizes(std::optional<plan::FilmId> film);
    void turnToMarch();
    void moveRegistration();
    void askForTicks();
    void askForWindow();
    void holdRegistration();
    void keepRegistration(const plan::Registration& next);
    [[nodiscard]] plan::FilmPtr workingInset() const;
    [[nodiscard]] Result<std::vector<geodesy::PlanePoint>> gridsTyped(const QString& typed) const;
    [[nodiscard]] QString gridsToType(const std::vector<geodesy::PlanePoint>& onGrid) const;
    void showCopies(bool shown);
    void showPage(QWidget& page);
    void leavePage();
    void showPlanCard();
    [[nodiscard]] QList<QAction*> allMenus() const;
    void hold(const settings::Choices& choices);
    void showActions();
    void leaveActions();
    void take(const settings::Choices& choices);
    void beginBrief();
    void endBrief();
};

}  // namespace crosstick::window
