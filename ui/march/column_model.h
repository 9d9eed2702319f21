#pragma once

#include <optional>

#include <QAbstractTableModel>

#include "core/movement/column_figures.h"
#include "ui/work/work.h"

namespace crosstick::march {

/// The elements of a column in their order, to be typed over. Every change is an edit of the plan, which the block on
/// the film, and whatever else shows the column, reads.
class ColumnModel final : public QAbstractTableModel {
    Q_OBJECT

  public:
    enum Field { Place, Symbol, Unit, Name, CallSign, People, Role, Behind, Length, Head, kFields };

    explicit ColumnModel(work::Work& work, QObject* parent = nullptr);

    /// Shows the column of a name; the first for none.
    void show(const std::string& column);
    void renew();
    [[nodiscard]] const plan::Column* column() const;  ///< null where the plan has none yet
    [[nodiscard]] const movement::ColumnFigures& figures() const { return figures_; }
    /// The words that a row's symbol is composed of.
    [[nodiscard]] std::string unitOf(int row) const;

    /// A new element after a row, or at the end; the column itself where the plan has none yet. Gives its row.
    int add(int after);
    /// Elements said in one line (movement::elementsSaid) after a row, or at the end: those that the plan knows by the
    /// same name join with their own strength where none is said. Gives the last new row; -1 where nothing was said.
    int addSaid(int after, const QString& line);
    void takeOut(int row);
    /// One place nearer to the head, or farther from it. Gives the new row.
    int move(int row, int by);
    /// Errors: march/bad-files, march/bad-gap.
    [[nodiscard]] Result<void> setFiles(const QString& typed);
    [[nodiscard]] Result<void> setApart(const QString& typed);
    [[nodiscard]] Result<void> setInterval(const QString& typed);
    void setName(const QString& typed);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

  Q_SIGNALS:
    void refused(const crosstick::Error& why);
    void taken();  ///< what was typed is in the plan

  private:
    work::Work& work_;
    std::string name_;  ///< of the column that is asked for
    plan::Force force_;
    movement::ColumnFigures figures_;

    [[nodiscard]] QString cell(int row, int field) const;
    [[nodiscard]] plan::Column* columnIn(plan::Force& force) const;
    [[nodiscard]] Result<plan::Force> typed(int row, int field, const std::string& words) const;
    [[nodiscard]] plan::Column& columnToFill(plan::Force& force) const;
    [[nodiscard]] Uuid joining(plan::Element said, const plan::Column& column, plan::Force& force) const;
    void commit(plan::Force force, const char* caption);
};

}  // namespace crosstick::march
