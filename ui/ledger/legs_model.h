#pragma once

#include <functional>
#include <optional>

#include <QAbstractTableModel>

#include "core/movement/paper_figures.h"
#include "ui/ledger/wants.h"

namespace crosstick::ledger {

/// The legs of the route in the ledger as the trade writes them, and a row of totals. The figures are those of the
/// route card: movement::paperFigures makes both.
class LegsModel final : public QAbstractTableModel {
    Q_OBJECT

  public:
    enum Column { Leg, To, Tie, Azimuth, Distance, Paces, Time, Arrive, Climb, BackAzimuth, GridAzimuth, kColumns };

    static constexpr int GapRole = Qt::UserRole + 1;  ///< true where a figure is missing and the cell says why

    LegsModel(work::Work& work, std::function<QString(const Error&)> say, QObject* parent = nullptr);

    void renew();
    [[nodiscard]] bool isEmpty() const { return !paper_; }
    [[nodiscard]] bool isLive(int row) const;  ///< the leg that is being drawn
    [[nodiscard]] bool isTotal(int row) const { return paper_ && row == static_cast<int>(paper_->legs.size()); }
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
    std::optional<movement::PaperRoute> paper_;
    std::optional<movement::RouteFigures> figures_;
    std::optional<Error> fault_;

    [[nodiscard]] QString cell(int row, int column) const;
    [[nodiscard]] QString total(int column) const;
    /// Why the figure of a cell is missing; nothing where it is there.
    [[nodiscard]] std::optional<Gap> gap(int row, int column) const;
    [[nodiscard]] QString hint(const QModelIndex& index) const;
};

}  // namespace crosstick::ledger
