// The raised tray: every measure in three rows by trade groups, or all that the words can mean.
#include <algorithm>

#include "ui/look/spoken.h"
#include "ui/tray/tray.h"

namespace crosstick::tray {
namespace {

constexpr int kHeading = 16;
constexpr int kHigh = 64;
constexpr int kGap = 4;
constexpr int kGroupGap = 16;

}  // namespace

void Tray::layGroups() {
    if (groupedFor_ != offered_ || groups_->widget() == nullptr) {
        fillGroups();
    }
    for (std::size_t n = 0; n < grouped_.size(); ++n) {
        grouped_[n]->setChecked(n == chosen_);
    }
    if (chosen_ < grouped_.size()) {
        groups_->ensureWidgetVisible(grouped_[chosen_], Offer::kSize.width(), 0);
    }
}

void Tray::fillGroups() {
    grouped_.clear();
    groupedFor_ = offered_;
    auto* inside = new QWidget;
    int left = 0;
    int right = 0;
    int row = 0;
    std::optional<measures::Group> group;
    for (std::size_t n = 0; n < offered_.size(); ++n) {
        const measures::Meant& meant = offered_[n];
        if (line_.words.empty() && group != meant.entry->group) {
            group = meant.entry->group;
            left = right + (n == 0 ? 0 : kGroupGap);
            row = 0;
            auto* heading = new QLabel(look::spoken(measures::nameOf(*group)), inside);
            heading->setFont(look::face(11, look::Weight::Bold));
            heading->move(left, 0);
        } else if (row == kRows) {
            left = right + kGap;
            row = 0;
        }
        auto* offer = new Offer(faces_, light_, inside);
        offer->setFixedSize(Offer::kSize.width(), kHigh);
        offer->show(meant, work_.plan(), {});
        offer->move(left, kHeading + row * (kHigh + kGap));
        connect(offer, &Offer::clicked, this, [this, n] { choose(n); });
        grouped_.push_back(offer);
        right = left + Offer::kSize.width();
        ++row;
    }
    inside->resize(right, kHeading + kRows * (kHigh + kGap));
    if (QWidget* old = groups_->takeWidget()) {  // one of its pictures may be what called
        old->hide();
        old->deleteLater();
    }
    groups_->setWidget(inside);
}

}  // namespace crosstick::tray
