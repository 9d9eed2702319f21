#pragma once

#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <set>

#include <QObject>

#include "core/files/journal.h"
#include "core/files/plan_file.h"
#include "core/movement/route_figures.h"
#include "core/movement/work_grid.h"
#include "core/plan/history.h"
#include "core/sheets/elevation.h"

namespace crosstick::work {

/// What a session takes from the world.
struct WorkOrder {
    std::filesystem::path share;  ///< coefficients
    std::filesystem::path state;  ///< folder of journals
    std::uint64_t seed = 0;
};

/// How films lie on the table: not a part of the plan.
struct FilmLook {
    bool shown = true;
    double strength = 1;  ///< 0 to 1
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
    /// The height model's file, for whoever computes on another thread and opens it anew; empty where there is none.
    [[nodiscard]] std::filesystem::path heightsFile() const;
    [[nodiscard]] const geodesy::MagneticModel* model() const { return model_ ? &*model_ : nullptr; }
    [[nodiscard]] const std::map<plan::ItemId, movement::RouteFigures>& figures() const { return figures_; }
    /// Why a route has no figures; nothing where it has.
    [[nodiscard]] std::optional<Error> figuresFault(const plan::ItemId& route) const;
    [[nodiscard]] Uuid newId() { return ids_.next(); }

    // Files. A plan that somebody else changed meanwhile is not written over: the error says so.
    [[nodiscard]] Result<void> open(const std::filesystem::path& file);
    /// A plan that has no file yet; its paths are read from a folder.
    void begin(plan::Plan plan, const std::filesystem::path& folder);
    [[nodiscard]] Result<void> save(Instant now);
    [[nodiscard]] Result<void> saveAs(const std::filesystem::path& file, Instant now);
    /// Takes up what a journal holds, on its file or, for a plan never saved, on nothing. Gives the number of edits.
    [[nodiscard]] Result<std::size_t> takeUp(const files::Leftover& leftover);
    void close();
    [[nodiscard]] const std::filesystem::path& file() const { return file_; }  ///< empty where never saved
    [[nodiscard]] const std::filesystem::path& folder() const { return folder_; }
    [[nodiscard]] bool isChanged() const;

    // Edits.
    void commit(plan::Plan next, const std::string& caption);
    void setDraft(std::optional<plan::Plan> draft);
    void undo();
    void redo();
    [[nodiscard]] std::string undoCaption() const;
    [[nodiscard]] std::string redoCaption() const;

    // What is looked at.
    [[nodiscard]] const std::optional<plan::ItemId>& selected() const { return selected_; }
    void select(std::optional<plan::ItemId> item);
    [[nodiscard]] const std::optional<plan::FilmId>& workingFilm() const { return working_; }
    void setWorkingFilm(const plan::FilmId& film);
    [[nodiscard]] int phase() const { return phase_; }  ///< number of the chosen phase; 0 where the plan has none
    void setPhase(int number);
    [[nodiscard]] FilmLook look(const plan::FilmId& film) const;
    void setLook(const plan::FilmId& film, FilmLook look);
    /// Films that lie on the table, the lowest first: those of the chosen phase and those of none.
    [[nodiscard]] std::vector<plan::FilmPtr> filmsOnTable() const;
    [[nodiscard]] geodesy::AngleUnit angles() const { return angles_; }
    void setAngles(geodesy::AngleUnit unit);
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
    void wetChanged();    ///< a route being drawn
    void tableChanged();  ///< films shown, working film, phase
    void journalFailed(const QString& why);

  private:
    WorkOrder order_;
    IdSource ids_;
    std::optional<geodesy::MagneticModel> model_;
    std::optional<plan::History> history_;
    std::optional<plan::Plan> draft_;
    std::unique_ptr<files::PlanFile> planFile_;
    std::optional<files::Journal> journal_;
    std::filesystem::path file_, folder_;
    std::optional<movement::WorkGrid> grid_;
    std::shared_ptr<const sheets::Elevation> heights_;
    std::map<plan::ItemId, movement::RouteFigures> figures_;
    std::map<plan::ItemId, Error> figureFaults_;
    std::optional<plan::ItemId> selected_;
    std::optional<plan::FilmId> working_;
    std::optional<plan::ItemId> ledgerRoute_;
    int phase_ = 0;
    std::map<plan::FilmId, FilmLook> looks_;
    geodesy::AngleUnit angles_ = geodesy::AngleUnit::Degrees;
    plan::Plan saved_;
    std::optional<plan::Plan> wetPlan_;
    plan::ItemId wetRoute_;

    void takePlan(plan::Plan plan, plan::Plan saved, const std::filesystem::path& folder);
    void openGround();
    void renewFigures(const plan::Plan& before);
    void keepChoices();
    void beginJournal();
    /// False where the step is not on the disk.
    [[nodiscard]] bool journalStep(const plan::Plan& before);
    void chooseLedgerRoute();
};

}  // namespace crosstick::work
