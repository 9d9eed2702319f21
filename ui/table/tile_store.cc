#include "ui/table/tile_store.h"

#include <algorithm>

#include <QCoreApplication>
#include <QPainter>

#include "ui/table/behind.h"

namespace crosstick::table {
namespace {

constexpr int kCoarsest = 7;  ///< levels above the wanted one that may stand in for it
constexpr std::size_t kMostAsked = 64;
constexpr int kPatienceMs = 500;

}  // namespace

void TileReader::open(std::size_t sheet, const SheetInk& ink, Theme theme, int generation) {
    Open& open = open_[sheet];
    open = {nullptr, generation};
    if (auto raster = sheets::Raster::open(ink.copy)) {
        open.tiles = std::make_unique<FileTiles>(std::move(*raster), theme, ink.ground);
    } else {
        Q_EMIT failed(sheet, generation);
    }
}

void TileReader::close(std::size_t sheet) {
    open_.erase(sheet);
}

void TileReader::read(SheetTile tile, int generation) {
    const auto found = open_.find(tile.sheet);
    if (found == open_.end() || !found->second.tiles || found->second.generation != generation ||
        QThread::currentThread()->isInterruptionRequested()) {
        return;
    }
    if (auto image = found->second.tiles->tile(tile.key)) {
        Q_EMIT arrived(tile, *image, generation);
    } else {
        Q_EMIT failed(tile.sheet, generation);
    }
}

void TileReader::paintGlance(std::size_t sheet, const std::shared_ptr<const sheets::Pixels>& whole, Theme theme,
                             int generation) {
    Q_EMIT glanced(sheet, imageOf(*whole, theme), generation);
}

TileStore::TileStore(QObject* parent, std::size_t capBytes)
    : QObject(parent), thread_(std::make_unique<QThread>()), reader_(new TileReader), cap_(capBytes) {
    reader_->moveToThread(thread_.get());
    connect(thread_.get(), &QThread::finished, reader_, &QObject::deleteLater);
    connect(this, &TileStore::wanted, reader_, &TileReader::read);
    connect(reader_, &TileReader::arrived, this, &TileStore::take);
    connect(reader_, &TileReader::glanced, this, [this](std::size_t sheet, const QImage& whole, int generation) {
        if (isOf(sheet, generation)) {
            laid_[sheet].glance = whole;
            Q_EMIT glanced();
        }
    });
    connect(reader_, &TileReader::failed, this, [this](std::size_t sheet, int generation) {
        if (isOf(sheet, generation)) {
            std::erase_if(asked_, [sheet](SheetTile tile) { return tile.sheet == sheet; });
            Q_EMIT failed(sheet);
        }
    });
    connect(thread_.get(), &QThread::started, reader_, &stepBehind);
    thread_->start();
}

TileStore::~TileStore() {
    laid_.clear();
    thread_->requestInterruption();  // of the tiles that are still asked for
    thread_->quit();
    if (!thread_->wait(kPatienceMs)) {
        (void)thread_.release();  // it hangs on a disk: left behind with its reader, which holds nothing of this
    }
}

void TileStore::lay(std::vector<SheetInk> sheets, Theme theme) {
    const bool isOtherLight = std::exchange(theme_, theme) != theme;
    for (std::size_t sheet = sheets.size(); sheet < laid_.size(); ++sheet) {
        drop(sheet);
    }
    laid_.resize(sheets.size());
    for (std::size_t sheet = 0; sheet < sheets.size(); ++sheet) {
        if (isOtherLight || !(laid_[sheet].ink == sheets[sheet])) {
            layOne(sheet, std::move(sheets[sheet]));
        }
    }
}

void TileStore::layOne(std::size_t sheet, SheetInk ink) {
    drop(sheet);
    Laid& laid = laid_[sheet];
    laid = {std::move(ink), {}, ++generations_};
    if (!laid.ink.copy.empty()) {
        QMetaObject::invokeMethod(
            reader_, [reader = reader_, sheet, ink = laid.ink, theme = theme_, generation = laid.generation] {
                reader->open(sheet, ink, theme, generation);
            });
    } else if (laid.ink.glance) {
        QMetaObject::invokeMethod(
            reader_, [reader = reader_, sheet, whole = laid.ink.glance, theme = theme_, generation = laid.generation] {
                reader->paintGlance(sheet, whole, theme, generation);
            });
    }
}

/// Forgets what is held of a sheet and closes its copy.
void TileStore::drop(std::size_t sheet) {
    std::erase_if(asked_, [sheet](SheetTile tile) { return tile.sheet == sheet; });
    for (auto held = held_.begin(); held != held_.end();) {
        if (held->first.sheet == sheet) {
            bytes_ -= static_cast<std::size_t>(held->second.image.sizeInBytes());
            turns_.erase(held->second.turn);
            held = held_.erase(held);
        } else {
            ++held;
        }
    }
    QMetaObject::invokeMethod(reader_, [reader = reader_, sheet] { reader->close(sheet); });
}

bool TileStore::isOf(std::size_t sheet, int generation) const {
    return sheet < laid_.size() && laid_[sheet].generation == generation;
}

bool TileStore::isOpen(std::size_t sheet) const {
    return sheet < laid_.size() && (!laid_[sheet].ink.copy.empty() || !laid_[sheet].glance.isNull());
}

bool TileStore::hasAny() const {
    return !held_.empty() ||
           std::any_of(laid_.begin(), laid_.end(), [](const Laid& laid) { return !laid.glance.isNull(); });
}

void TileStore::take(SheetTile tile, const QImage& image, int generation) {
    if (!isOf(tile.sheet, generation)) {
        return;
    }
    asked_.erase(tile);
    turns_.push_front(tile);
    held_[tile] = {image, turns_.begin()};
    bytes_ += static_cast<std::size_t>(image.sizeInBytes());
    while (bytes_ > cap_ && turns_.size() > 1) {
        const auto oldest = held_.find(turns_.back());
        bytes_ -= static_cast<std::size_t>(oldest->second.image.sizeInBytes());
        held_.erase(oldest);
        turns_.pop_back();
    }
    Q_EMIT arrived(tile);
}

void TileStore::hear() {
    QCoreApplication::sendPostedEvents(this, QEvent::MetaCall);
}

const QImage* TileStore::use(SheetTile tile) {
    const auto found = held_.find(tile);
    if (found == held_.end()) {
        return nullptr;
    }
    turns_.splice(turns_.begin(), turns_, found->second.turn);
    return &found->second.image;
}

void TileStore::ask(SheetTile tile) {
    if (asked_.size() < kMostAsked && asked_.insert(tile).second) {
        Q_EMIT wanted(tile, laid_[tile.sheet].generation);
    }
}

void TileStore::foresee(std::size_t sheet, const View& view, const SheetLie& lie) {
    const Laid& laid = laid_[sheet];
    if (laid.ink.copy.empty()) {
        return;
    }
    for (const TileKey key : tilesIn(view, lie, laid.ink.size, levelFor(lie, view.zoom()))) {
        if (!held_.contains({sheet, key})) {
            ask({sheet, key});
        }
    }
}

void TileStore::paintGlance(QPainter& painter, const Laid& laid, const View& view, const SheetLie& lie) const {
    const QRectF whole(0, 0, laid.ink.size.columns, laid.ink.size.rows);
    painter.setTransform(onTable(view, lie, whole, laid.glance.size()) * painter.transform());
    painter.drawImage(QPointF(0, 0), laid.glance);
}

void TileStore::paint(QPainter& painter, std::size_t sheet, const View& view, const SheetLie& lie, const QRectF& part,
                      Scaling scaling) {
    if (!isOpen(sheet)) {
        return;
    }
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setRenderHint(QPainter::SmoothPixmapTransform, scaling == Scaling::Smooth);
    const Laid& laid = laid_[sheet];
    if (laid.ink.copy.empty()) {
        if (laid.ink.ground == Ground::Map) {  // a film's glance would hide the map
            paintGlance(painter, laid, view, lie);
        }
        painter.restore();
        return;
    }
    const QTransform base = painter.transform();
    const auto keys = tilesIn(view, lie, laid.ink.size, levelFor(lie, view.zoom()));
    std::set<TileKey> standIns;
    for (const TileKey key : keys) {
        if (held_.contains({sheet, key})) {
            continue;
        }
        ask({sheet, key});
        for (int up = 1; up <= kCoarsest; ++up) {
            const TileKey coarser{key.level + up, key.column >> up, key.row >> up};
            if (held_.contains({sheet, coarser})) {
                standIns.insert(coarser);
                break;
            }
        }
    }
    // The coarsest first, so that finer ones lie over them.
    const auto lay = [&](TileKey key) {
        const QTransform toTable = tileOnTable(view, lie, key);
        if (const QImage* image =
                toTable.mapRect(QRectF(0, 0, kTile, kTile)).intersects(part) ? use({sheet, key}) : nullptr) {
            painter.setTransform(toTable * base);
            painter.drawImage(QPointF(0, 0), *image);
        }
    };
    std::for_each(standIns.rbegin(), standIns.rend(), lay);
    std::for_each(keys.begin(), keys.end(), lay);
    painter.restore();
}

}  // namespace crosstick::table
