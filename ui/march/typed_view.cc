#include "ui/march/typed_view.h"

#include <QCompleter>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>

#include "ui/look/theme.h"
#include "ui/march/typed_table.h"

namespace crosstick::march {
namespace {

constexpr int kRow = 26;

/// A field in a cell, with what may be chosen under it.
class CellEditor final : public QStyledItemDelegate {
  public:
    using QStyledItemDelegate::QStyledItemDelegate;
    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& /*option*/,
                          const QModelIndex& index) const override {
        auto* field = new QLineEdit(parent);
        field->setAccessibleName(index.model()->headerData(index.column(), Qt::Horizontal).toString());
        const auto* table = qobject_cast<const TypedTable*>(index.model());
        const QStringList choices = table == nullptr ? QStringList() : table->choices(index.row(), index.column());
        if (!choices.isEmpty()) {
            auto* completer = new QCompleter(choices, field);
            completer->setCaseSensitivity(Qt::CaseInsensitive);
            field->setCompleter(completer);
        }
        return field;
    }
};

bool isDelete(const QKeyEvent& event) {
    return event.key() == Qt::Key_Delete || event.key() == Qt::Key_Backspace;
}

}  // namespace

TypedView::TypedView(QAbstractItemModel& model, const QString& name, QWidget* parent) : QTableView(parent) {
    setAccessibleName(name);
    setModel(&model);
    setItemDelegate(new CellEditor(this));
    setSelectionBehavior(QAbstractItemView::SelectItems);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                    QAbstractItemView::AnyKeyPressed | QAbstractItemView::SelectedClicked);
    setFrameShape(QFrame::NoFrame);
    setShowGrid(false);
    setAlternatingRowColors(true);
    setTabKeyNavigation(true);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    verticalHeader()->hide();
    verticalHeader()->setDefaultSectionSize(kRow);
    verticalHeader()->setMinimumSectionSize(kRow);
    horizontalHeader()->setFixedHeight(24);
    horizontalHeader()->setFont(look::face(11));
    horizontalHeader()->setHighlightSections(false);
}

bool TypedView::isForCell(const QKeyEvent& event) const {
    const bool isEnter = event.key() == Qt::Key_Return || event.key() == Qt::Key_Enter;
    return currentIndex().isValid() && (isEnter || isDelete(event)) && event.modifiers() == Qt::NoModifier;
}

bool TypedView::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && isForCell(*static_cast<QKeyEvent*>(event))) {
        event->accept();
        return true;
    }
    return QTableView::event(event);
}

void TypedView::keyPressEvent(QKeyEvent* event) {
    if (state() == EditingState || !isForCell(*event)) {
        QTableView::keyPressEvent(event);
    } else if (model()->flags(currentIndex()).testFlag(Qt::ItemIsEditable)) {
        isDelete(*event) ? static_cast<void>(model()->setData(currentIndex(), QString(), Qt::EditRole))
                         : edit(currentIndex());
    }
}

}  // namespace crosstick::march
