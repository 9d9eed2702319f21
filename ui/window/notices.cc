#include "ui/window/notices.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

namespace crosstick::window {

Notices::Notices(QWidget* parent) : QWidget(parent), rows_(new QVBoxLayout(this)) {
    setAccessibleName(tr("Notices"));
    rows_->setContentsMargins(0, 0, 0, 0);
    rows_->setSpacing(0);
    hide();
}

void Notices::setLight(look::Light light) {
    light_ = light;
    renew();
}

/// Painted, not left to the palette: the application's style sheet takes a palette set before the first show back.
void Notices::paintEvent(QPaintEvent* /*event*/) {
    QPainter(this).fillRect(rect(), look::colours(light_).wash);
}

void Notices::say(const QString& words) {
    if (said_ != words) {
        said_ = words;
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

QWidget* Notices::row(const QString& words, const QColor& ink, const std::vector<Deed>& deeds) {
    auto* row = new QWidget(this);
    auto* across = new QHBoxLayout(row);
    across->setContentsMargins(12, 4, 12, 4);
    across->setSpacing(8);
    auto* line = new QLabel(words, row);
    line->setTextFormat(Qt::PlainText);
    line->setAccessibleName(words);
    line->setWordWrap(true);
    QPalette colours = line->palette();
    colours.setColor(QPalette::WindowText, ink);
    line->setPalette(colours);
    across->addWidget(line, 1);
    for (const Deed& deed : deeds) {
        auto* button = new QPushButton(deed.words, row);
        // The deed may take this very row away: it is done once the click is over.
        connect(button, &QPushButton::clicked, this, deed.does, Qt::QueuedConnection);
        across->addWidget(button);
    }
    rows_->addWidget(row);
    QAccessibleEvent told(line, QAccessible::Alert);
    QAccessible::updateAccessibility(&told);
    return row;
}

void Notices::renew() {
    while (QLayoutItem* item = rows_->takeAt(0)) {
        item->widget()->hide();
        item->widget()->deleteLater();
        delete item;
    }
    const look::Colours c = look::colours(light_);
    for (const auto& [about, kept] : kept_) {
        if (kept.away) {
            continue;
        }
        std::vector<Deed> deeds = kept.deeds;
        deeds.push_back({tr("Put away"), [this, about = about] {
                             kept_[about].away = true;
                             renew();
                         }});
        row(QStringLiteral("\u25a0 ") + kept.words, c.error, deeds);
    }
    if (!said_.isEmpty()) {
        row(said_, c.ink, {});
    }
    setVisible(rows_->count() > 0);
}

}  // namespace crosstick::window
