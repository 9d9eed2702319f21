#pragma once

#include <QStyledItemDelegate>
#include <QTableView>

namespace crosstick::march {

/// A table that is typed over: any key opens a cell, Enter too, Delete empties it. Where a cell has choices they are
/// offered while one types.
class TypedView final : public QTableView {
    Q_OBJECT

  public:
    TypedView(QAbstractItemModel& model, const QString& name, QWidget* parent);

  protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    /// Enter or Delete on a cell that can be typed over; in the rest of the window they mean other things.
    [[nodiscard]] bool isForCell(const QKeyEvent& event) const;
};

}  // namespace crosstick::march
