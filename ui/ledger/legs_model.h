#pragma once

#include <functional>
#include <optional>

#include <QAbstractTableModel>

#include "core/movement/paper_figures.h"
#include "ui/ledger/wants.h"

namespace crosstick::ledger {

/// How the ledger lists a way: legs from route point to route point, or every bend of theirs for itself.
enum class Rows { Legs, Bends };

/// The legs of the route in the ledger as the trade writes them, and a row of totals. The figures are those of the
/// route card: movement::paperFigures makes both.
class LegsModel final : public QAbstractTableModel {
    Q_OBJECT

  public:
    enum Column { Leg, To, Tie, Azimuth, Distance, Paces, Time, Arrive, Climb, BackAzimuth, GridAzimuth, kColumns };

    static constexpr int kGapRole = Qt::UserRole + 1;  ///< true where a figure is missing and the cell says why

    LegsModel(work::Work& work, std::function<QString(const Error&)> say, QObject* parent = nullptr);

    void renew();
    void setRows(Rows rows);
    [[nodiscard]] Rows rows() const { return rowsAre_; }
    /// The leg that a row is of, from 0; nothing for the sums.
    [[nodiscard]] std::optional<std::size_t> legAt(int row) const;
    /// The last row of the leg that ends on a route point; nothing where none does.
    [[nodiscard]] std::optional<int> rowTo(const plan::ItemId& point) const;
    [[nodiscard]] bool isEmpty() const { return !paper_; }
    [[nodiscard]] bool isLive(int row) const;  ///< the leg that is being drawn
    [[nodiscard]] bool isTotal(int row) const { return paper_ && row == static_cast<int>(lines_.size()); }
    [[nodiscard]] const std::optional<movement::PaperRoute>& paper() const { return paper_; }
    [[nodiscard]] const std::optional<movement::RouteFigures>& figures() const { return figures_; }
    [[nodiscard]] const std::optional<Error>& fault() const { return fault_; }

    /// What would fill a cell whose figure is missing.
    [[nodiscard]] std::optional<Want> wantAt(const QModelIndex& cell) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    work::Work& work_;
    std::function<QString(const Error&)> say_;
    Rows rowsAre_ = Rows::Legs;
    /// A row: a leg, or one piece of it.
    struct Line {
        std::size_t leg = 0;
        std::optional<std::size_t> piece;
        bool isLast = true;  ///< of the leg
    };
    std::vector<Line> lines_;
    std::optional<movement::PaperRoute> paper_;
    std::optional<movement::RouteFigures> figures_;
    std::optional<Error> fault_;

    void listLines();
    [[nodiscard]] QString cell(int row, int column) const;
    [[nodiscard]] QString pieceCell(const Line& line, int column) const;
    [[nodiscard]] QString total(int column) const;
    /// Why the figure of a cell is missing; nothing where it is there.
    [[nodiscard]] std::optional<Gap> gap(int row, int column) const;
    [[nodiscard]] QString hint(const QModelIndex& index) const;
};

}  // namespace crosstick::ledger
