#pragma once

#include <optional>

#include <QAbstractTableModel>

#include "core/movement/paper_figures.h"
#include "ui/work/work.h"

namespace crosstick::ledger {

/// The legs of the route in the ledger as the trade writes them, and a row of totals. The figures are those of the
/// route card: movement::paperFigures makes both.
class LegsModel final : public QAbstractTableModel {
    Q_OBJECT

  public:
    enum Column { Leg, To, Tie, Azimuth, Distance, Paces, Time, Arrive, Climb, BackAzimuth, GridAzimuth, kColumns };

    explicit LegsModel(work::Work& work, QObject* parent = nullptr);

    void renew();
    [[nodiscard]] bool isEmpty() const { return !paper_; }
    [[nodiscard]] bool isLive(int row) const;  ///< the leg that is being drawn
    [[nodiscard]] bool isTotal(int row) const { return paper_ && row == static_cast<int>(paper_->legs.size()); }
    [[nodiscard]] const std::optional<movement::PaperRoute>& paper() const { return paper_; }
    [[nodiscard]] const std::optional<movement::RouteFigures>& figures() const { return figures_; }
    [[nodiscard]] const std::optional<Error>& fault() const { return fault_; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    work::Work& work_;
    std::optional<movement::PaperRoute> paper_;
    std::optional<movement::RouteFigures> figures_;
    std::optional<Error> fault_;

    [[nodiscard]] QString cell(int row, int column) const;
    [[nodiscard]] QString total(int column) const;
};

}  // namespace crosstick::ledger
