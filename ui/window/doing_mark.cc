#include "ui/window/doing_mark.h"

#include <QHBoxLayout>

namespace crosstick::window {
namespace {

constexpr int kSoonMs = 150;  ///< nothing that is over before it is shown: the head would flicker
constexpr int kStepMs = 250;

}  // namespace

DoingMark::DoingMark(work::Errands& errands, QWidget* parent)
    : QWidget(parent), errands_(errands), words_(new QLabel(this)), giveUp_(new QPushButton(tr("Give up"), this)) {
    setAccessibleName(tr("What is being done"));
    words_->setTextFormat(Qt::PlainText);
    words_->setFont(look::face(12, look::Weight::Bold));
    giveUp_->setFixedHeight(24);
    giveUp_->setStyleSheet(QStringLiteral("padding: 1px 8px;"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(8, 0, 0, 0);
    row->setSpacing(8);
    row->addWidget(words_);
    row->addWidget(giveUp_);
    first_.setSingleShot(true);
    first_.setInterval(kSoonMs);
    next_.setInterval(kStepMs);
    connect(&first_, &QTimer::timeout, this, &DoingMark::renew);
    connect(&next_, &QTimer::timeout, this, &DoingMark::renew);
    connect(&errands_, &work::Errands::changed, this, [this] {
        if (errands_.isIdle() || isVisible()) {
            renew();
        } else if (!first_.isActive()) {
            first_.start();
        }
    });
    connect(giveUp_, &QPushButton::clicked, this, [this] {
        const QString words = errands_.doing() ? errands_.doing()->words : QString();
        errands_.giveUp();
        Q_EMIT givenUp(words);
    });
    hide();
}

void DoingMark::setLight(look::Light light) {
    QPalette colours = words_->palette();
    colours.setColor(QPalette::WindowText, look::colours(light).ours);
    words_->setPalette(colours);
}

void DoingMark::renew() {
    const auto doing = errands_.doing();
    if (!doing) {
        first_.stop();
        next_.stop();
        hide();
        return;
    }
    QString words = doing->words;
    if (doing->percent) {
        words += tr(", %1 %").arg(*doing->percent);
    } else if (doing->seconds > 0) {
        words += tr(", %1 s").arg(doing->seconds);
    }
    words_->setText(words_->fontMetrics().elidedText(words, Qt::ElideMiddle, mostWide_));
    words_->setToolTip(words);
    giveUp_->setVisible(doing->mayStop && doing->seconds > 0);
    giveUp_->setAccessibleName(tr("Give up: %1").arg(doing->words));
    next_.start();
    show();
}

}  // namespace crosstick::window
