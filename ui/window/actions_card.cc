#include "ui/window/actions_card.h"

#include <algorithm>

#include <QCoreApplication>
#include <QKeyEvent>
#include <QLabel>
#include <QMenu>
#include <QPainter>
#include <QStyledItemDelegate>
#include <QVBoxLayout>

namespace crosstick::window {
namespace {

constexpr int kRow = 40;
constexpr int kInside = 12;
constexpr int kWhere = Qt::UserRole + 1;
constexpr int kKey = Qt::UserRole + 2;
constexpr int kPlace = Qt::UserRole + 3;  ///< among the doings

/// The first part is the action's, what a tab parts off stands for an abbreviation.
QString bare(QString words) {
    words = words.section(QLatin1Char('\t'), 0, 0);
    return words.remove(QLatin1Char('&'));
}

void collect(QMenu& menu, const QString& path, std::vector<Doing>& doings) {
    Q_EMIT menu.aboutToShow();  // some fill themselves only then
    for (QAction* action : menu.actions()) {
        const bool isKnown =
            std::any_of(doings.begin(), doings.end(), [action](const Doing& known) { return known.action == action; });
        if (action->menu() != nullptr) {
            collect(*action->menu(), path + QStringLiteral(", ") + bare(action->text()), doings);
        } else if (!isKnown && !action->isSeparator() && !action->text().isEmpty()) {
            doings.push_back({action, bare(action->text()), path});
        }
    }
}

/// Words in bold, the menus under them, the key in its cap.
class RowPainter final : public QStyledItemDelegate {
  public:
    RowPainter(const look::Light& light, QObject* parent) : QStyledItemDelegate(parent), light_(light) {}
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& /*option*/, const QModelIndex& /*at*/) const override {
        return {120, kRow};
    }
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& at) const override {
        const look::Colours c = look::colours(light_);
        const bool isChosen = option.state.testFlag(QStyle::State_Selected);
        const bool isEnabled = at.flags().testFlag(Qt::ItemIsEnabled);
        const QRect row = option.rect;
        painter->save();
        painter->fillRect(row, isChosen ? c.wash : at.row() % 2 == 0 ? c.card : c.band);
        if (isChosen) {
            painter->fillRect(QRect(row.left(), row.top(), 4, row.height()), c.ours);
        }
        const QString key = at.data(kKey).toString();
        const QFont small = look::face(11);
        const int cap = key.isEmpty() ? 0 : QFontMetrics(small).horizontalAdvance(key) + 12;
        const auto letters = [&](const QRect& place, const QFont& font, const QColor& ink, const QString& words) {
            painter->setFont(font);
            painter->setPen(ink);
            painter->drawText(place, Qt::AlignVCenter | Qt::AlignLeft,
                              QFontMetrics(font).elidedText(words, Qt::ElideRight, place.width()));
        };
        const QRect inside = row.adjusted(kInside, 4, -kInside, -4);
        letters(inside.adjusted(0, 0, 0, -16), look::face(12, isEnabled ? look::Weight::Bold : look::Weight::Regular),
                isEnabled ? c.ink : c.inkTwo, at.data().toString());
        letters(inside.adjusted(0, 16, -cap - 6, 0), small, c.inkTwo, at.data(kWhere).toString());
        if (cap > 0) {
            const QRect box(inside.right() - cap + 1, inside.bottom() - 16, cap, 16);
            painter->setPen(QPen(c.edge, 1, isEnabled ? Qt::SolidLine : Qt::DotLine));
            painter->drawRect(box.adjusted(0, 0, -1, -1));
            painter->setPen(isEnabled ? c.ink : c.inkTwo);
            painter->setFont(small);
            painter->drawText(box, Qt::AlignCenter, key);
        }
        painter->restore();
    }

  private:
    const look::Light& light_;
};

}  // namespace

std::vector<Doing> doingsOf(const QList<QAction*>& menus) {
    std::vector<Doing> doings;
    for (const QAction* menu : menus) {
        if (menu->menu() != nullptr) {
            collect(*menu->menu(), bare(menu->text()), doings);
        }
    }
    return doings;
}

bool answers(const Doing& doing, const QString& typed) {
    const QString all = QStringList{doing.words, doing.where, doing.action->shortcut().toString(), doing.action->text(),
                                    doing.action->toolTip()}
                            .join(QLatin1Char(' '));
    const QStringList words = typed.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    return std::all_of(words.begin(), words.end(),
                       [&](const QString& word) { return all.contains(word, Qt::CaseInsensitive); });
}

ActionsCard::ActionsCard(std::function<std::vector<Doing>()> all, QWidget* parent)
    : QWidget(parent), all_(std::move(all)), field_(new QLineEdit(this)), list_(new QListWidget(this)) {
    setAccessibleName(tr("What can I do"));
    auto* title = new QLabel(tr("What can I do"), this);
    title->setFont(look::face(15, look::Weight::Bold));
    field_->setAccessibleName(tr("A word of what you want to do"));
    field_->setPlaceholderText(tr("a word: route, night, ticks"));
    list_->setAccessibleName(tr("What can be done"));
    list_->setItemDelegate(new RowPainter(light_, list_));
    list_->setFrameShape(QFrame::NoFrame);
    list_->setUniformItemSizes(true);
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list_->setFocusPolicy(Qt::NoFocus);  // the caret stays where it is typed
    auto* rows = new QVBoxLayout(this);
    rows->setContentsMargins(0, kInside, 0, 0);
    rows->setSpacing(8);
    auto* head = new QVBoxLayout;
    head->setContentsMargins(kInside, 0, kInside, 0);
    head->setSpacing(8);
    head->addWidget(title);
    head->addWidget(field_);
    auto* none = new QLabel(tr("Nothing is called that. Try another word, or a part of one."), this);
    none->setWordWrap(true);
    none->hide();
    head->addWidget(none);
    rows->addLayout(head);
    rows->addWidget(list_, 1);
    field_->installEventFilter(this);
    connect(field_, &QLineEdit::textChanged, this, [this, none] {
        sift();
        none->setVisible(list_->count() == 0);
    });
    connect(field_, &QLineEdit::returnPressed, this, &ActionsCard::choose);
    connect(list_, &QListWidget::itemClicked, this, &ActionsCard::choose);
}

void ActionsCard::setLight(look::Light light) {
    light_ = light;
    update();
    list_->viewport()->update();
}

void ActionsCard::paintEvent(QPaintEvent* /*event*/) {
    QPainter(this).fillRect(rect(), look::colours(light_).card);
}

void ActionsCard::open() {
    doings_ = all_();
    field_->clear();
    sift();
    field_->setFocus();
}

void ActionsCard::sift() {
    list_->clear();
    const QString typed = field_->text().trimmed();
    std::vector<std::size_t> found;
    for (std::size_t n = 0; n < doings_.size(); ++n) {
        if (answers(doings_[n], typed)) {
            found.push_back(n);
        }
    }
    std::stable_partition(found.begin(), found.end(),
                          [&](std::size_t n) { return doings_[n].words.startsWith(typed, Qt::CaseInsensitive); });
    for (const std::size_t n : found) {
        const Doing& doing = doings_[n];
        auto* row = new QListWidgetItem(doing.words, list_);
        row->setData(kWhere, doing.where);
        row->setData(kKey, doing.action->shortcut().toString());
        row->setData(kPlace, static_cast<int>(n));
        row->setToolTip(doing.action->toolTip());
        if (!doing.action->isEnabled()) {
            row->setFlags(row->flags() & ~Qt::ItemIsEnabled);
        }
    }
    for (int n = 0; n < list_->count() && list_->currentRow() < 0; ++n) {
        if (list_->item(n)->flags().testFlag(Qt::ItemIsEnabled)) {
            list_->setCurrentRow(n);
        }
    }
}

void ActionsCard::choose() {
    const QListWidgetItem* row = list_->currentItem();
    if (row != nullptr && row->flags().testFlag(Qt::ItemIsEnabled)) {
        if (QAction* action = doings_[static_cast<std::size_t>(row->data(kPlace).toInt())].action) {
            Q_EMIT chosen(action);
        }
    }
}

/// The caret stays in the field: what goes up and down goes through the list.
bool ActionsCard::eventFilter(QObject* watched, QEvent* event) {
    if (watched == field_ && event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->key() == Qt::Key_Escape) {
            Q_EMIT left();
            return true;
        }
        if (key->key() == Qt::Key_Up || key->key() == Qt::Key_Down || key->key() == Qt::Key_PageUp ||
            key->key() == Qt::Key_PageDown) {
            QCoreApplication::sendEvent(list_, event);
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace crosstick::window
