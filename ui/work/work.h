#pragma once

#include <deque>
#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>

#include <QObject>

#include "core/files/journal.h"
#include "core/files/plan_file.h"
#include "core/files/stale_traces.h"
#include "core/movement/measured_pieces.h"
#include "core/movement/route_figures.h"
#include "core/movement/work_grid.h"
#include "core/plan/history.h"
#include "core/plan/numbering.h"
#include "core/sheets/plan_ground.h"
#include "ui/work/errands.h"
#include "ui/work/film_look.h"
#include "ui/work/sheet_grounds.h"

namespace crosstick::work {

/// What a session takes from the world.
struct WorkOrder {
    std::filesystem::path share;        ///< coefficients
    std::filesystem::path state;        ///< folder of journals
    sheets::ForeignReader reader = {};  ///< of map sheets and height models
    std::uint64_t seed = 0;
    std::function<void()> beforeErrand = {};  ///< called on an errand's thread before it begins
};

/// The pens that films are drawn with, on the table and on paper: not a part of the plan.
enum class Pens { InColour, One };

/// Which films of the phase lie on the sheet, and whether the uppermost is lifted off: neither a part of the plan.
enum class Company { All, WorkingAlone };
enum class Top { Lies, Lifted };

/// Logical pixels for one metre of the grid.
using Nearness = Quantity<struct NearnessTag>;
/// What part of the grid was seen on the table.
struct Seen {
    geodesy::PlanePoint centre;
    Nearness nearness;
    Degrees up;
    friend bool operator==(const Seen&, const Seen&) = default;
};
/// What was chosen and seen while a state of the plan was the present one; it comes back with it.
struct Outlook {
    std::vector<plan::ItemId> selected;  ///< the leading one first
    std::optional<plan::FilmId> working;
    int phase = 0;
    std::optional<Seen> seen;
};

/// One plan in work: its file, history, journal, what is selected and which film is drawn on. Everything in the window
/// reads from here and hands its edits to it. Lives on the window's thread.
class Work : public QObject {
    Q_OBJECT

  public:
    explicit Work(WorkOrder order, QObject* parent = nullptr);
    ~Work() override;

    // The plan.
    [[nodiscard]] bool isOpen() const { return history_.has_value(); }
    [[nodiscard]] const plan::Plan& plan() const;       ///< the draft while something is dragged, else the present one
    [[nodiscard]] const plan::Plan& committed() const;  ///< the present one of the history
    [[nodiscard]] const movement::WorkGrid* grid() const { return grid_ ? &*grid_ : nullptr; }
    [[nodiscard]] const sheets::HeightSource* heights() const { return heights_.get(); }
    [[nodiscard]] const sheets::ForeignReader& reader() const { return order_.reader; }
    /// Finds the files of the plan's ground, those that it carries too; for another thread.
    [[nodiscard]] sheets::FileFinder finder() const;
    [[nodiscard]] SheetGrounds& sheetGrounds() { return sheetGrounds_; }
    [[nodiscard]] const SheetGrounds& sheetGrounds() const { return sheetGrounds_; }
    /// Why the grid of the work cannot be opened, or the heights not read; nothing where they can, or where none are
    /// named.
    [[nodiscard]] const std::optional<Error>& gridFault() const { return gridFault_; }
    [[nodiscard]] const std::optional<Error>& heightsFault() const { return heightsFault_; }
    [[nodiscard]] bool isReadingHeights() const { return readsHeights_; }
    [[nodiscard]] const geodesy::MagneticModel* model() const { return model_ ? &*model_ : nullptr; }
    [[nodiscard]] const std::map<plan::ItemId, movement::RouteFigures>& figures() const { return figures_; }
    /// Why a route has no figures; nothing where it has.
    [[nodiscard]] std::optional<Error> figuresFault(const plan::ItemId& route) const;
    [[nodiscard]] Uuid newId() { return ids_.next(); }

    // Files. Reading and writing happen on another thread; `then` is called on the window's when it is done. What asks
    // for a plan in place of this one is overtaken by whatever asks after it.
    using Then = std::function<void(Result<void>)>;
    void open(const std::filesystem::path& file, Then then);
    /// A plan that has no file yet; its paths are read from a folder.
    void begin(plan::Plan plan, const std::filesystem::path& folder);
    /// Writes the plan as it is now; edits go on meanwhile. While another save runs this one waits for it, and shares
    /// its fate where that fails. A plan that somebody else changed meanwhile is not written over: the error says so.
    void save(Instant now, Then then);
    void saveAs(const std::filesystem::path& file, Instant now, Then then);
    [[nodiscard]] bool isSaving() const { return !saves_.empty(); }
    /// Calls once no save runs any more: now, or after the last one.
    void whenSaved(std::function<void()> then);
    /// Takes up what a journal holds, on its file or, for a plan never saved, on nothing. Gives the number of edits.
    void takeUp(const files::Leftover& leftover, std::function<void(Result<std::size_t>)> then);
    /// Looks at grid and heights again: something may have been mended.
    void lookAtGround();
    [[nodiscard]] Errands& errands() { return errands_; }
    void close();
    [[nodiscard]] const std::filesystem::path& file() const { return file_; }  ///< empty where never saved
    [[nodiscard]] const std::filesystem::path& folder() const { return folder_; }
    [[nodiscard]] bool isChanged() const;

    // Edits.
    /// A step that would change what lies on a pinned film is refused, and the plan stays as it is. Numbers
    /// along routes follow the edit.
    void commit(plan::Plan next, const std::string& caption);
    /// Why a hand may not make such a step; nothing where it may. Errors: plan/film-pinned.
    [[nodiscard]] std::optional<Error> refusal(const plan::Plan& next) const;
    void setDraft(std::optional<plan::Plan> draft);
    void undo();
    void redo();
    [[nodiscard]] std::string undoCaption() const;
    [[nodiscard]] std::string redoCaption() const;
    /// Captions of all steps, the oldest first, and how many of them are done.
    [[nodiscard]] std::vector<std::string> steps() const;
    [[nodiscard]] std::size_t stepsDone() const;
    /// Undoes or redoes until so many are done. What was chosen and seen then comes back, as with undo and redo.
    void goToStep(std::size_t done);
    [[nodiscard]] plan::Inserted inserted() const { return inserted_; }
    void setInserted(plan::Inserted inserted) { inserted_ = inserted; }

    // What is looked at.
    /// The leading one of what is selected: cards and ledger show that.
    [[nodiscard]] std::optional<plan::ItemId> selected() const {
        return selection_.empty() ? std::nullopt : std::optional(selection_.front());
    }
    [[nodiscard]] const std::vector<plan::ItemId>& selection() const { return selection_; }  ///< the leading one first
    void select(std::optional<plan::ItemId> item);                                           ///< this alone
    void selectAll(std::vector<plan::ItemId> items);                                         ///< the first leads
    [[nodiscard]] const std::optional<plan::FilmId>& workingFilm() const { return working_; }
    void setWorkingFilm(const plan::FilmId& film);
    [[nodiscard]] int phase() const { return phase_; }  ///< number of the chosen phase; 0 where the plan has none
    void setPhase(int number);
    [[nodiscard]] FilmLook look(const plan::FilmId& film) const;
    void setLook(const plan::FilmId& film, FilmLook look);
    /// Films that lie on the table, the lowest first: those of the chosen phase and those of none.
    [[nodiscard]] std::vector<plan::FilmPtr> filmsOnTable() const;
    /// Those of them that lie on the sheet now: shown, the working one alone where it is wanted so, the top one not
    /// while it is lifted. An inset lies there alone while it is worked on, and else as its frame on its parent.
    [[nodiscard]] std::vector<plan::FilmPtr> filmsSeen() const;
    [[nodiscard]] bool isSeen(const plan::FilmId& film) const;
    [[nodiscard]] Company company() const { return company_; }
    void setCompany(Company company);
    [[nodiscard]] Top top() const { return top_; }
    void setTop(Top top);
    /// Copies whose source is another now, in the plan as it is shown.
    [[nodiscard]] const std::vector<files::StaleTrace>& staleTraces() const { return staleTraces_; }
    [[nodiscard]] Pens pens() const { return pens_; }
    void setPens(Pens pens);
    [[nodiscard]] geodesy::AngleUnit angles() const { return angles_; }
    void setAngles(geodesy::AngleUnit unit);
    void setSeen(const Seen& seen) { seen_ = seen; }  ///< the table shows that
    /// A route that is being drawn, in the plan as it would be: the ledger shows it while it is wet.
    void setWetRoute(std::optional<plan::Plan> with, plan::ItemId route = {});
    [[nodiscard]] const std::optional<plan::Plan>& wetPlan() const { return wetPlan_; }
    /// Figures of a straight piece between two places of the plan's plane, as a leg of a route would have them.
    [[nodiscard]] Result<movement::RouteFigures> figuresBetween(geodesy::PlanePoint from, geodesy::PlanePoint to) const;
    [[nodiscard]] Result<movement::RouteFigures> figuresOf(const plan::Plan& plan, const plan::Route& route) const;
    /// The route that the ledger shows: the selected one, that of the selected route point, else the last chosen.
    [[nodiscard]] plan::RoutePtr ledgerRoute() const;

  Q_SIGNALS:
    void planReplaced();  ///< another plan altogether: sheet, films and view begin anew
    void planChanged();   ///< an edit, or a draft of one
    void selectionChanged();
    void wetChanged();                                  ///< a route being drawn
    void tableChanged();                                ///< films shown, working film, phase, pens
    void refused(const crosstick::Error& why);          ///< a step that may not be made
    void groundChanged();                               ///< grid or heights came, went, or cannot be read
    void seenAgain(const crosstick::work::Seen& seen);  ///< a step of the history was seen so
    void journalFailed(const crosstick::Error& why);

  private:
    WorkOrder order_;
    IdSource ids_;
    std::optional<geodesy::MagneticModel> model_;
    std::optional<plan::History> history_;
    std::optional<plan::Plan> draft_;
    std::shared_ptr<files::PlanFile> planFile_;  ///< while a save runs it belongs to the errand's thread
    std::int64_t fileSaves_ = 0;                 ///< how often that file has been saved
    std::optional<files::Journal> journal_;
    std::filesystem::path file_, folder_;
    std::optional<movement::WorkGrid> grid_;
    std::shared_ptr<const sheets::Elevation> heights_;
    std::map<plan::ItemId, movement::RouteFigures> figures_;
    std::map<plan::ItemId, movement::KeptPieces> pieces_;  ///< of each route, so that a drag measures what moves
    std::map<plan::ItemId, Error> figureFaults_;
    std::vector<plan::ItemId> selection_;
    files::TraceWatch traces_;
    std::vector<files::StaleTrace> staleTraces_;
    std::optional<plan::FilmId> working_;
    std::optional<plan::ItemId> ledgerRoute_;
    int phase_ = 0;
    std::map<plan::FilmId, FilmLook> looks_;
    Company company_ = Company::All;
    Top top_ = Top::Lies;
    geodesy::AngleUnit angles_ = geodesy::AngleUnit::Degrees;
    Pens pens_ = Pens::InColour;
    plan::Plan saved_;
    std::optional<plan::Plan> wetPlan_;
    std::map<std::size_t, Outlook> outlooks_;  ///< by the number of a state of the history
    std::optional<Seen> seen_;
    plan::Inserted inserted_ = plan::Inserted::NextFree;
    plan::ItemId wetRoute_;

    std::optional<Error> gridFault_, heightsFault_;
    bool readsHeights_ = false;
    int heightsRound_ = 0;

    /// A save that is asked for; the first one runs.
    struct SaveWish {
        plan::Plan plan;
        std::filesystem::path as;  ///< empty: where it is
        Instant now;
        std::vector<Then> thens;
    };
    /// What came of one.
    struct Saved {
        Result<void> done;
        std::shared_ptr<files::PlanFile> file;
    };
    std::deque<SaveWish> saves_;
    std::optional<Saved> savedWhileDragging_;
    std::vector<std::function<void()>> afterSaves_;
    SheetGrounds sheetGrounds_;
    int asked_ = 0;    ///< number of the last that asked for another plan
    Errands errands_;  ///< the last: what still runs knows the rest

    /// A plan to be laid on the table, as an errand brings it.
    struct Brought;
    [[nodiscard]] static Result<Brought> bring(const std::filesystem::path& file);
    [[nodiscard]] static Result<Brought> bringBack(const files::Leftover& leftover);
    void lay(Brought brought);
    void startSave();
    void takeSaved(const Saved& saved);
    void moveTo(const std::filesystem::path& file);
    void endSaves();
    /// Grid and heights of a plan whose sheets are others now.
    void keepGround(const plan::Plan& before);
    void readHeights();
    void laySheets();
    void takeHeights(Result<std::shared_ptr<const sheets::Elevation>> read);
    void openGrid(Result<movement::WorkGrid> grid);
    /// What every step of the history has in its train.
    /// @param shown  what the figures are of  @param before  committed
    void settle(const plan::Plan& shown, const plan::Plan& before);
    void draftIsGone();
    void keepOutlook();
    void comeBack();
    void renewFigures(const plan::Plan& before);
    void keepChoices();
    /// A journal for the file as it is, holding what is newer; the one before it goes only when this one is whole.
    bool beginJournal();
    /// False where the step is not on the disk.
    [[nodiscard]] bool journalStep(const plan::Plan& before);
    void chooseLedgerRoute();
};

}  // namespace crosstick::work
