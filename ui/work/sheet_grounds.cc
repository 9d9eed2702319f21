#include "ui/work/sheet_grounds.h"

#include <algorithm>

namespace crosstick::work {

SheetGrounds::SheetGrounds(Errands& errands, const sheets::ForeignReader& reader)
    : errands_(errands), reader_(reader) {}

std::unique_ptr<SheetGround> SheetGrounds::takeOut(const plan::SheetId& sheet) {
    const auto found =
        std::find_if(laid_.begin(), laid_.end(), [&](const Laid& laid) { return laid.ground && laid.sheet == sheet; });
    if (found != laid_.end()) {
        return std::move(found->ground);
    }
    auto made = std::make_unique<SheetGround>(errands_, reader_);
    connect(made.get(), &SheetGround::changed, this, &SheetGrounds::changed);
    return made;
}

void SheetGrounds::lay(const std::vector<plan::SheetPtr>& sheets, const std::filesystem::path& folder,
                       const sheets::FileFinder& finder) {
    std::vector<Laid> next;
    for (const plan::SheetPtr& sheet : sheets) {
        next.push_back({sheet->id, takeOut(sheet->id)});
    }
    std::swap(laid_, next);
    for (const Laid& gone : next) {
        if (gone.ground) {  // it may be one that has just said something: it goes when that is heard
            gone.ground->disconnect(this);
            gone.ground->lay(nullptr, {}, {});
        }
    }
    for (Laid& gone : next) {
        if (gone.ground) {
            gone.ground.release()->deleteLater();
        }
    }
    for (std::size_t n = 0; n < sheets.size(); ++n) {
        laid_[n].ground->lay(sheets[n], folder, finder);
    }
    Q_EMIT changed();
}

void SheetGrounds::layFaultyAgain() {
    for (const Laid& laid : laid_) {
        if (laid.ground->fault()) {
            laid.ground->layAgain();
        }
    }
}

void SheetGrounds::copyIsDamaged(std::size_t place) {
    if (place < laid_.size()) {
        laid_[place].ground->copyIsDamaged();
    }
}

const SheetGround* SheetGrounds::of(const plan::SheetId& sheet) const {
    const auto found = std::find_if(laid_.begin(), laid_.end(), [&](const Laid& laid) { return laid.sheet == sheet; });
    return found == laid_.end() ? nullptr : found->ground.get();
}

const SheetGround* SheetGrounds::first() const {
    return laid_.empty() ? nullptr : laid_.front().ground.get();
}

bool SheetGrounds::isReading() const {
    return std::any_of(laid_.begin(), laid_.end(), [](const Laid& laid) { return laid.ground->isReading(); });
}

bool SheetGrounds::hasFault() const {
    return std::any_of(laid_.begin(), laid_.end(), [](const Laid& laid) { return laid.ground->fault().has_value(); });
}

}  // namespace crosstick::work
