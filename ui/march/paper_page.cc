#include "ui/march/paper_page.h"

#include <algorithm>

#include <QHBoxLayout>
#include <QHeaderView>
#include <QPainter>
#include <QScrollArea>
#include <QVBoxLayout>

namespace crosstick::march {
namespace {

constexpr int kFactsWide = 220;
constexpr double kPixelsPerMm = 4;  ///< of a paper's columns, so that its words fit at the window's size

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

QString lines(const std::vector<std::string>& all) {
    QStringList words;
    for (const std::string& one : all) {
        if (!one.empty()) {
            words << text(one);
        }
    }
    return words.join(QLatin1Char('\n'));
}

Qt::Alignment aligned(press::Align align) {
    return Qt::AlignVCenter | (align == press::Align::Right    ? Qt::AlignRight
                               : align == press::Align::Middle ? Qt::AlignHCenter
                                                               : Qt::AlignLeft);
}

}  // namespace

void PaperModel::show(press::PaperTable paper) {
    beginResetModel();
    paper_ = std::move(paper);
    endResetModel();
}

int PaperModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(paper_.rows.size());
}

int PaperModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(paper_.columns.size());
}

QVariant PaperModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rowCount() || index.column() >= columnCount()) {
        return {};
    }
    const auto& row = paper_.rows[static_cast<std::size_t>(index.row())];
    const auto at = static_cast<std::size_t>(index.column());
    if (role == Qt::TextAlignmentRole) {
        return QVariant(aligned(paper_.columns[at].align));
    }
    const bool isText = role == Qt::DisplayRole || role == Qt::ToolTipRole;
    return isText && at < row.size() ? QVariant(lines({row[at].first, row[at].second})) : QVariant();
}

QVariant PaperModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= columnCount()) {
        return {};
    }
    const press::PaperColumn& column = paper_.columns[static_cast<std::size_t>(section)];
    return role == Qt::DisplayRole         ? QVariant(lines(column.heads))
           : role == Qt::TextAlignmentRole ? QVariant(aligned(column.align))
                                           : QVariant();
}

PaperPage::PaperPage(const QString& name, QWidget* parent)
    : QWidget(parent), title_(new QLabel(name)), facts_(new QLabel), view_(new QTableView(this)) {
    setAccessibleName(name);
    title_->setFont(look::face(15, look::Weight::Bold));
    for (QLabel* label : {title_, facts_}) {
        label->setTextFormat(Qt::PlainText);
        label->setWordWrap(true);
    }
    facts_->setFont(look::face(11));
    auto* side = new QScrollArea(this);
    side->setWidgetResizable(true);
    side->setFrameShape(QFrame::NoFrame);
    side->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    side->setFixedWidth(kFactsWide);
    side->setFocusPolicy(Qt::NoFocus);
    auto* body = new QWidget;
    auto* rows = new QVBoxLayout(body);
    rows->setContentsMargins(12, 6, 8, 6);
    rows->setSpacing(4);
    rows->addWidget(title_);
    rows->addWidget(facts_);
    rows->addStretch(1);
    side->setWidget(body);
    view_->setAccessibleName(name);
    view_->setModel(&model_);
    view_->setFrameShape(QFrame::NoFrame);
    view_->setShowGrid(false);
    view_->setAlternatingRowColors(true);
    view_->setSelectionMode(QAbstractItemView::SingleSelection);
    view_->setTabKeyNavigation(false);
    view_->setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    view_->verticalHeader()->hide();
    view_->horizontalHeader()->setFont(look::face(11));
    view_->horizontalHeader()->setHighlightSections(false);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(1);
    row->addWidget(side);
    row->addWidget(view_, 1);
}

void PaperPage::setLight(look::Light light) {
    light_ = light;
    QPalette p = look::tablePalette(palette(), light);
    setPalette(p);
    view_->setPalette(p);
    p.setColor(QPalette::WindowText, look::colours(light).inkTwo);
    facts_->setPalette(p);
    update();
}

void PaperPage::show(press::PaperTable paper) {
    title_->setText(text(paper.head.title));
    QStringList facts{text(paper.head.purpose)};
    for (const auto* column : {&paper.head.right, &paper.head.left}) {
        for (const press::CardFact& fact : *column) {
            facts << text(fact.label) + QStringLiteral(": ") + text(fact.value);
        }
    }
    for (const press::CardNote& note : paper.notes) {
        facts << text(note.lead) + QLatin1Char(' ') + text(note.text);
    }
    facts_->setText(facts.join(QLatin1Char('\n')));
    model_.show(std::move(paper));
    for (int n = 0; n < model_.columnCount(); ++n) {
        const int wide = qRound(model_.paper().columns[static_cast<std::size_t>(n)].width * kPixelsPerMm);
        view_->setColumnWidth(n, std::max(wide, view_->horizontalHeader()->sectionSizeHint(n)));
    }
    view_->resizeRowsToContents();
}

void PaperPage::tell(const QString& words) {
    title_->setText(accessibleName());
    facts_->setText(words);
    model_.show({});
}

void PaperPage::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const look::Colours c = look::colours(light_);
    painter.fillRect(rect(), c.card);
    painter.fillRect(kFactsWide, 0, 1, height(), c.rule);
}

}  // namespace crosstick::march
