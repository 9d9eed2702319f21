#include "ui/details/figures_list.h"

#include <QPainter>

namespace crosstick::details {
namespace {

constexpr int kRow = 20;
constexpr int kSide = 12;
constexpr int kGap = 8;

}  // namespace

FiguresList::FiguresList(const look::Light& light, QWidget* parent) : QWidget(parent), light_(light) {
    setFixedHeight(0);
}

void FiguresList::show(std::vector<FigureRow> rows) {
    if (rows == rows_) {
        return;
    }
    rows_ = std::move(rows);
    setFixedHeight(static_cast<int>(rows_.size()) * kRow + (rows_.empty() ? 0 : 4));
    QStringList words;
    for (const FigureRow& row : rows_) {
        words << (row.value.isEmpty() ? row.what : row.what + QLatin1Char(' ') + row.value);
    }
    setAccessibleName(words.join(QStringLiteral(", ")));
    update();
}

void FiguresList::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const look::Colours c = look::colours(light_);
    int top = 2;
    for (const FigureRow& row : rows_) {
        const QRect line(kSide, top, width() - 2 * kSide, kRow);
        painter.setFont(look::face(12, look::Weight::Bold));
        const int wide = painter.fontMetrics().horizontalAdvance(row.value);
        painter.setPen(c.ink);
        painter.drawText(line, Qt::AlignRight | Qt::AlignVCenter, row.value);
        painter.setFont(look::face(row.value.isEmpty() ? 11 : 12));
        painter.setPen(c.inkTwo);
        const int room = line.width() - wide - kGap;
        painter.drawText(line, Qt::AlignLeft | Qt::AlignVCenter,
                         painter.fontMetrics().elidedText(row.what, Qt::ElideRight, room));
        if (!row.value.isEmpty()) {
            painter.fillRect(kSide, top + kRow - 1, width() - 2 * kSide, 1, c.rule);
        }
        top += kRow;
    }
}

}  // namespace crosstick::details
