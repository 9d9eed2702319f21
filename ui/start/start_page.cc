#include "ui/start/start_page.h"

#include <QEvent>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QPainter>
#include <QResizeEvent>
#include <QVBoxLayout>

namespace crosstick::start {
namespace {

constexpr int kGlassLeft = 98;
constexpr int kGlassWide = 760;
constexpr int kSideWide = 388;
constexpr int kNarrow = 1000;
constexpr int kNarrowSide = 260;

/// A way in: what it does, what it takes, its key.
class Way final : public QPushButton {
  public:
    Way(const QString& what, const QString& how, const QString& key, const look::Light& light, QWidget* parent)
        : QPushButton(parent), what_(what), how_(how), key_(key), light_(light) {
        QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
        policy.setHeightForWidth(true);
        setSizePolicy(policy);
        setAccessibleName(what + QStringLiteral(", ") + how);
    }

    [[nodiscard]] QSize sizeHint() const override { return {300, 52}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {120, 52}; }
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int wide) const override {
        return 24 + heightOf(what_, wide) + heightOf(how_, wide);
    }

  protected:
    void paintEvent(QPaintEvent* /*event*/) override {
        QPainter painter(this);
        const look::Colours c = look::colours(light_);
        painter.fillRect(rect(), underMouse() ? c.card : c.well);
        painter.setPen(QPen(hasFocus() ? c.ours : c.edge, hasFocus() ? 2 : 1));
        painter.drawRect(hasFocus() ? rect().adjusted(1, 1, -1, -1) : rect().adjusted(0, 0, -1, -1));
        const int row = heightOf(what_, width());
        const int top = (height() - row - heightOf(how_, width())) / 2;
        painter.setPen(c.ink);
        painter.setFont(look::face(15, look::Weight::Bold));
        painter.drawText(QRect(kInside, top, room(width()), row), kWrapped, what_);
        painter.setPen(c.inkTwo);
        painter.setFont(look::face(12));
        painter.drawText(QRect(kInside, top + row, room(width()), height() - top - row), kWrapped, how_);
        const QRect cap(width() - 12 - capWide(), height() / 2 - 9, capWide(), 18);
        painter.setPen(QPen(c.ink, 1));
        painter.drawRect(cap);
        painter.drawText(cap, Qt::AlignCenter, key_);
    }

  private:
    static constexpr int kInside = 16;
    static constexpr int kWrapped =
        static_cast<int>(Qt::AlignTop) | static_cast<int>(Qt::AlignLeft) | static_cast<int>(Qt::TextWordWrap);
    QString what_, how_, key_;
    const look::Light& light_;

    [[nodiscard]] int capWide() const { return QFontMetrics(look::face(12)).horizontalAdvance(key_) + 12; }
    [[nodiscard]] int room(int wide) const { return wide - kInside - capWide() - 20; }
    [[nodiscard]] int heightOf(const QString& words, int wide) const {
        const QFontMetrics metrics(&words == &what_ ? look::face(15, look::Weight::Bold) : look::face(12));
        return metrics.boundingRect(QRect(0, 0, room(wide), 1000), kWrapped, words).height();
    }
};

void clear(QLayout* layout) {
    while (QLayoutItem* item = layout->takeAt(0)) {
        if (item->widget() != nullptr) {
            item->widget()->hide();
            item->widget()->deleteLater();
        }
        delete item;
    }
}

QLabel* words(const QString& text, int size, look::Weight weight, QWidget* parent) {
    auto* label = new QLabel(text, parent);
    label->setFont(look::face(size, weight));
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    return label;
}

}  // namespace

StartPage::StartPage(QWidget* parent)
    : QScrollArea(parent), desk_(new QWidget), glass_(new QWidget(desk_)), side_(new QWidget(desk_)) {
    setAccessibleName(tr("Empty window"));
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::NoFocus);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    desk_->installEventFilter(this);
    fillGlass();
    fillSide();
    setWidget(desk_);
}

void StartPage::fillGlass() {
    auto* rows = new QVBoxLayout(glass_);
    rows->setSpacing(10);
    rows->addStretch(3);
    first_ = words(tr("Lay a map sheet on the table."), 28, look::Weight::Bold, glass_);
    rows->addWidget(first_);
    rows->addWidget(words(tr("Open a GeoTIFF map sheet: the films get its grid, its scale and its ticks. Or take up a "
                             "plan, or try the demo."),
                          15, look::Weight::Regular, glass_));
    rows->addSpacing(10);
    const auto way = [&](const QString& what, const QString& how, const QString& key, auto signal) {
        auto* button = new Way(what, how, key, light_, glass_);
        connect(button, &QPushButton::clicked, this, signal);
        rows->addWidget(button);
    };
    way(tr("Lay a map sheet"), tr("GeoTIFF in a projected grid; starts a new plan"), tr("Ctrl N"),
        &StartPage::sheetWanted);
    way(tr("Register a scan or photo"), tr("a picture of a sheet, laid on its grid by a few crossings"),
        tr("Ctrl Shift G"), &StartPage::scanWanted);
    way(tr("Take up a plan"), tr("a GeoPackage that was saved before"), tr("Ctrl O"), &StartPage::planWanted);
    way(tr("Start from the grid alone"), tr("blank film with ticks, for a sheet you hold in your hand"), tr("Ctrl G"),
        &StartPage::gridWanted);
    rows->addStretch(4);
}

void StartPage::fillSide() {
    auto* side = new QVBoxLayout(side_);
    side->setContentsMargins(0, 0, 0, 0);
    side->setSpacing(8);
    side->addWidget(words(tr("Plans on this desk"), 15, look::Weight::Bold, side_));
    recents_ = new QVBoxLayout;
    recents_->setSpacing(8);
    found_ = new QVBoxLayout;
    found_->setSpacing(8);
    side->addLayout(found_);  // first: what a crash left must not be rolled out of sight
    side->addLayout(recents_);
    side->addSpacing(8);
    last_ = new QHBoxLayout;
    auto* demo = new QPushButton(tr("Try it on the demo island   Ctrl D"), side_);
    auto* night = new QPushButton(tr("Night light   Ctrl L"), side_);
    connect(demo, &QPushButton::clicked, this, &StartPage::demoWanted);
    connect(night, &QPushButton::clicked, this, &StartPage::nightWanted);
    last_->addWidget(demo, 1);
    last_->addWidget(night);
    side->addLayout(last_);
    side->addStretch(1);
    side->addWidget(words(tr("A planning and training aid. It does not replace a current map, a compass check, or your "
                             "judgement."),
                          12, look::Weight::Regular, side_));
}

void StartPage::setLight(look::Light light) {
    light_ = light;
    setLeftovers(leftovers_);  // their colours are their own
    desk_->update();
}

void StartPage::setRecent(const std::vector<RecentPlan>& plans) {
    clear(recents_);
    for (std::size_t n = 0; n < plans.size() && n < 3; ++n) {
        const QString file = plans[n].file;
        auto* button = new Way(plans[n].name, plans[n].words, tr("Alt %1").arg(n + 1), light_, side_);
        button->setToolTip(file);
        connect(button, &QPushButton::clicked, this, [this, file] { Q_EMIT recentWanted(file); });
        recents_->addWidget(button);
    }
    if (plans.empty()) {
        recents_->addWidget(
            words(tr("None yet. Plans that you save are listed here."), 12, look::Weight::Regular, side_));
    }
    place();
}

void StartPage::setLeftovers(std::vector<files::Leftover> leftovers) {
    clear(found_);
    leftovers_ = std::move(leftovers);
    for (const files::Leftover& leftover : leftovers_) {
        found_->addWidget(offer(leftover));
    }
    place();
}

/// What a crash left of one plan, in our colour, and the two things that can be done with it.
QWidget* StartPage::offer(const files::Leftover& leftover) {
    const QString name = leftover.base.file.empty()
                             ? tr("a plan never saved")
                             : QFileInfo(QString::fromStdString(leftover.base.file)).completeBaseName();
    auto* frame = new QFrame(side_);
    auto* rows = new QVBoxLayout(frame);
    rows->setContentsMargins(12, 8, 12, 8);
    auto* head = words(tr("Found after a break-off"), 12, look::Weight::Bold, frame);
    QPalette violet = head->palette();
    violet.setColor(QPalette::WindowText, look::colours(light_).ours);
    head->setPalette(violet);
    rows->addWidget(head);
    const QString steps = leftover.edits == 1 ? tr("%1: 1 step newer than the file.").arg(name)
                                              : tr("%1: %2 steps newer than the file.").arg(name).arg(leftover.edits);
    auto* count = words(steps, 12, look::Weight::Regular, frame);
    count->setToolTip(QString::fromStdString(leftover.base.file));
    rows->addWidget(count);
    auto* row = new QBoxLayout(isNarrow() ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    auto* take = new QPushButton(tr("Take up the steps"), frame);
    take->setProperty("main", true);
    auto* leave = new QPushButton(tr("Keep the file as it is"), frame);
    for (QPushButton* button : {take, leave}) {
        button->setAccessibleDescription(steps);
        row->addWidget(button);
    }
    connect(take, &QPushButton::clicked, this, [this, leftover] { Q_EMIT takeUpWanted(leftover); });
    connect(leave, &QPushButton::clicked, this, [this, leftover] { Q_EMIT leaveWanted(leftover); });
    rows->addLayout(row);
    QPalette wash = frame->palette();
    wash.setColor(QPalette::Window, look::colours(light_).wash);
    frame->setPalette(wash);
    frame->setAutoFillBackground(true);
    return frame;
}

bool StartPage::isNarrow() const {
    return width() < kNarrow;
}

void StartPage::resizeEvent(QResizeEvent* event) {
    QScrollArea::resizeEvent(event);
    if (isNarrow() != (event->oldSize().width() < kNarrow)) {
        setLeftovers(leftovers_);  // their buttons stand otherwise
    }
    place();
}

void StartPage::place() {
    const bool narrow = isNarrow();
    first_->setFont(look::face(narrow ? 20 : 28, look::Weight::Bold));
    const int wholeWide = viewport()->width();
    const int gap = narrow ? 16 : 56;
    const int left =
        narrow ? 12 : std::max(18, std::min(kGlassLeft, (wholeWide - kGlassWide - kSideWide - 56) / 2 + 18));
    const int side = narrow ? kNarrowSide : std::min(kSideWide, wholeWide / 3);
    last_->setDirection(QBoxLayout::LeftToRight);
    if (last_->minimumSize().width() > side) {  // a small screen, or a language of long words
        last_->setDirection(QBoxLayout::TopToBottom);
    }
    const int wide = std::min(kGlassWide, wholeWide - left - side - gap - (narrow ? 12 : 18));
    const int margin = narrow ? 16 : std::min(104, wide / 8);
    glass_->layout()->setContentsMargins(margin, narrow ? 12 : 40, margin, narrow ? 12 : 40);
    const int top = std::max(narrow ? 12 : 16, std::min(60, height() / 12));
    const int needed =
        std::max(glass_->layout()->totalHeightForWidth(wide), side_->layout()->totalHeightForWidth(side));
    const int high = std::max(needed, std::min(590, viewport()->height() - 2 * top));
    desk_->resize(wholeWide, std::max(viewport()->height(), high + 2 * top));
    glass_->setGeometry(left, top, wide, high);
    side_->setGeometry(left + wide + gap, top, side, high);
    desk_->update();
}

bool StartPage::eventFilter(QObject* watched, QEvent* event) {
    if (watched == desk_ && event->type() == QEvent::Paint) {
        paintDesk();
    }
    return QScrollArea::eventFilter(watched, event);
}

void StartPage::paintDesk() {
    QPainter painter(desk_);
    const look::Colours c = look::colours(light_);
    painter.fillRect(desk_->rect(), c.desk);
    const QRect glass = glass_->geometry();
    painter.fillRect(glass, c.well);
    painter.setPen(QPen(c.edge, 1));
    painter.drawRect(glass.adjusted(0, 0, -1, -1));
    if (isNarrow()) {
        return;
    }
    QPen dash(c.edge, 1, Qt::CustomDashLine);
    dash.setDashPattern({6, 4});
    painter.setPen(dash);
    painter.drawRect(glass.adjusted(39, 39, -40, -40));
    painter.setPen(QPen(c.edge, 2));
    for (const int x : {glass.left() + 64, glass.right() - 64}) {
        for (const int y : {glass.top() + 64, glass.bottom() - 64}) {
            painter.drawLine(x - 18, y, x + 18, y);
            painter.drawLine(x, y - 18, x, y + 18);
        }
    }
}

}  // namespace crosstick::start
