#include "ui/window/notices.h"

#include <algorithm>

#include <QAccessible>
#include <QEvent>
#include <QGridLayout>
#include <QPainter>
#include <QPushButton>
#include <QScrollBar>

namespace crosstick::window {
namespace {

constexpr double kMostOfWindow = 0.4;
constexpr int kLeastWords = 200;

/// A long path may break after any of its signs, so that it is never wider than its column.
QString breakable(const QString& words) {
    constexpr qsizetype kLong = 24;
    QStringList all = words.split(QLatin1Char(' '));
    for (QString& word : all) {
        for (const char sign : {'/', '_', '-', '.'}) {
            if (word.size() > kLong) {
                word.replace(QLatin1Char(sign), QLatin1Char(sign) + QString(QChar(0x200b)));
            }
        }
    }
    return all.join(QLatin1Char(' '));
}

}  // namespace

Notices::Notices(QWidget* parent) : QScrollArea(parent), body_(new QWidget(this)) {
    setAccessibleName(tr("Notices"));
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::NoFocus);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setWidgetResizable(true);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setWidget(body_);
    body_->installEventFilter(this);
    hide();
}

void Notices::setLight(look::Light light) {
    light_ = light;
    renew();
}

/// The ground is painted, not left to the palette: the application's style sheet takes a palette set before the first
/// show back.
bool Notices::eventFilter(QObject* watched, QEvent* event) {
    if (watched == body_ && event->type() == QEvent::Paint) {
        QPainter(body_).fillRect(body_->rect(), look::colours(light_).wash);
    }
    return QScrollArea::eventFilter(watched, event);
}

void Notices::say(const QString& words, const std::vector<Deed>& deeds) {
    if (said_.words != words) {
        said_ = {words, deeds, false};
        renew();
    }
}

void Notices::keep(const std::string& about, const QString& words, std::vector<Deed> deeds) {
    const auto held = kept_.find(about);
    if (held != kept_.end() && held->second.words == words) {
        return;
    }
    kept_[about] = {words, std::move(deeds), false};
    renew();
}

void Notices::mend(const std::string& about) {
    if (kept_.erase(about) > 0) {
        renew();
    }
}

QString Notices::kept(const std::string& about) const {
    const auto held = kept_.find(about);
    return held == kept_.end() ? QString() : held->second.words;
}

/// @param columns  of buttons, of which a row with fewer takes the last ones
void Notices::addRow(int row, int columns, const QString& words, const QColor& ink, const std::vector<Deed>& deeds) {
    auto* line = new QLabel(breakable(words), body_);
    line->setTextFormat(Qt::PlainText);
    line->setAccessibleName(words);
    line->setWordWrap(true);
    line->setMinimumWidth(kLeastWords);
    QPalette colours = line->palette();
    colours.setColor(QPalette::WindowText, ink);
    line->setPalette(colours);
    grid_->addWidget(line, row, 0, 1, 1 + columns - static_cast<int>(deeds.size()), Qt::AlignVCenter);
    int column = 1 + columns - static_cast<int>(deeds.size());
    for (const Deed& deed : deeds) {
        auto* button = new QPushButton(deed.words, body_);
        button->setAccessibleDescription(words);
        button->setToolTip(words);
        // The deed may take this very row away: it is done once the click is over.
        connect(button, &QPushButton::clicked, this, deed.does, Qt::QueuedConnection);
        grid_->addWidget(button, row, column++, Qt::AlignTop);
        button->show();
    }
    line->show();  // the layout would show it later, and would not count it before
    QAccessibleEvent told(line, QAccessible::Alert);
    QAccessible::updateAccessibility(&told);
}

void Notices::renew() {
    for (QObject* child : body_->children()) {
        if (auto* old = qobject_cast<QWidget*>(child)) {
            old->hide();
            old->deleteLater();
        }
    }
    delete grid_;  // with what its columns had grown to
    grid_ = new QGridLayout(body_);
    grid_->setContentsMargins(12, 4, 12, 4);
    grid_->setHorizontalSpacing(8);
    grid_->setVerticalSpacing(4);
    grid_->setColumnStretch(0, 1);
    const look::Colours c = look::colours(light_);
    struct Row {
        QString words;
        QColor ink;
        std::vector<Deed> deeds;
    };
    std::vector<Row> rows;
    const auto add = [&](const QString& words, const QColor& ink, std::vector<Deed> deeds,
                         const std::function<void()>& putAway) {
        deeds.push_back({tr("Put away"), putAway});
        rows.push_back({words, ink, std::move(deeds)});
    };
    for (const auto& [about, kept] : kept_) {
        if (!kept.away) {
            add(QStringLiteral("\u25a0 ") + kept.words, c.error, kept.deeds, [this, about = about] {
                kept_[about].away = true;
                renew();
            });
        }
    }
    if (!said_.words.isEmpty()) {
        add(said_.words, c.ink, said_.deeds, [this] { say({}); });
    }
    std::size_t columns = 0;
    for (const Row& row : rows) {
        columns = std::max(columns, row.deeds.size());
    }
    for (std::size_t n = 0; n < rows.size(); ++n) {
        addRow(static_cast<int>(n), static_cast<int>(columns), rows[n].words, rows[n].ink, rows[n].deeds);
    }
    setVisible(!rows.empty());
    fit();
}

void Notices::fit() {
    if (grid_ == nullptr || !isVisibleTo(parentWidget())) {
        return;
    }
    const int most = static_cast<int>(window()->height() * kMostOfWindow);
    const int whole = grid_->totalHeightForWidth(width());
    const bool rolls = whole > most;
    setVerticalScrollBarPolicy(rolls ? Qt::ScrollBarAlwaysOn : Qt::ScrollBarAlwaysOff);
    setFixedHeight(std::min(whole, most));
}

void Notices::resizeEvent(QResizeEvent* event) {
    QScrollArea::resizeEvent(event);
    fit();
}

}  // namespace crosstick::window
