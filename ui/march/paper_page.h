#pragma once

#include <QAbstractTableModel>
#include <QLabel>
#include <QTableView>
#include <QWidget>

#include "ui/look/theme.h"
#include "ui/press/paper_table.h"

namespace crosstick::march {

/// A paper that is a table, to be read in the window: the very value that pages are made of.
class PaperModel final : public QAbstractTableModel {
    Q_OBJECT

  public:
    using QAbstractTableModel::QAbstractTableModel;
    void show(press::PaperTable paper);
    [[nodiscard]] const press::PaperTable& paper() const { return paper_; }
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    press::PaperTable paper_;
};

/// Such a paper in the sill: at the left its title and facts, then its rows.
class PaperPage final : public QWidget {
    Q_OBJECT

  public:
    PaperPage(const QString& name, QWidget* parent);
    void setLight(look::Light light);
    void show(press::PaperTable paper);
    /// In place of a paper that cannot be made yet.
    void tell(const QString& words);
    [[nodiscard]] const PaperModel& model() const { return model_; }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    PaperModel model_;
    look::Light light_ = look::Light::Day;
    QLabel *title_, *facts_;
    QTableView* view_;
};

}  // namespace crosstick::march
