#include "ui/table/tile_store.h"

#include <algorithm>

#include <QPainter>

#include "ui/table/behind.h"

namespace crosstick::table {
namespace {

constexpr int kCoarsest = 7;  ///< levels above the wanted one that may stand in for it
constexpr std::size_t kMostAsked = 64;

}  // namespace

void TileReader::open(const std::filesystem::path& file, Theme theme, int generation) {
    generation_ = generation;
    tiles_.reset();
    if (auto raster = sheets::Raster::open(file)) {
        tiles_ = std::make_unique<FileTiles>(std::move(*raster), theme);
    } else {
        Q_EMIT failed(QString::fromStdString(std::string(raster.error().fault.name)), generation);
    }
}

void TileReader::read(TileKey key, int generation) {
    if (!tiles_ || generation != generation_) {
        return;
    }
    if (auto image = tiles_->tile(key)) {
        Q_EMIT arrived(key, *image, generation);
    } else {
        Q_EMIT failed(QString::fromStdString(std::string(image.error().fault.name)), generation);
    }
}

void TileReader::paintGlance(const std::shared_ptr<const sheets::Pixels>& whole, Theme theme, int generation) {
    Q_EMIT glanced(imageOf(*whole, theme), generation);
}

TileStore::TileStore(QObject* parent, std::size_t capBytes) : QObject(parent), reader_(new TileReader), cap_(capBytes) {
    reader_->moveToThread(&thread_);
    connect(&thread_, &QThread::finished, reader_, &QObject::deleteLater);
    connect(this, &TileStore::wanted, reader_, &TileReader::read);
    connect(reader_, &TileReader::arrived, this, &TileStore::take);
    connect(reader_, &TileReader::glanced, this, [this](const QImage& whole, int generation) {
        if (generation == generation_) {
            glance_ = whole;
            Q_EMIT glanced();
        }
    });
    connect(reader_, &TileReader::failed, this, [this](const QString& fault, int generation) {
        if (generation == generation_) {
            asked_.clear();
            Q_EMIT failed(fault);
        }
    });
    connect(&thread_, &QThread::started, reader_, &stepBehind);
    thread_.start();
}

TileStore::~TileStore() {
    ++generation_;
    thread_.quit();
    thread_.wait();
}

void TileStore::open(const std::filesystem::path& copy, RasterSize size, Theme theme) {
    close();
    size_ = size;
    isOpen_ = true;
    const int generation = generation_;
    QMetaObject::invokeMethod(reader_,
                              [reader = reader_, copy, theme, generation] { reader->open(copy, theme, generation); });
}

void TileStore::glance(const std::shared_ptr<const sheets::Pixels>& whole, RasterSize size, Theme theme) {
    close();
    size_ = size;
    QMetaObject::invokeMethod(reader_, [reader = reader_, whole, theme, generation = generation_] {
        reader->paintGlance(whole, theme, generation);
    });
}

void TileStore::close() {
    ++generation_;
    held_.clear();
    turns_.clear();
    asked_.clear();
    bytes_ = 0;
    isOpen_ = false;
    glance_ = {};
}

void TileStore::take(TileKey key, const QImage& image, int generation) {
    if (generation != generation_) {
        return;
    }
    asked_.erase(key);
    turns_.push_front(key);
    held_[key] = {image, turns_.begin()};
    bytes_ += static_cast<std::size_t>(image.sizeInBytes());
    while (bytes_ > cap_ && turns_.size() > 1) {
        const auto oldest = held_.find(turns_.back());
        bytes_ -= static_cast<std::size_t>(oldest->second.image.sizeInBytes());
        held_.erase(oldest);
        turns_.pop_back();
    }
    Q_EMIT arrived(key);
}

const QImage* TileStore::use(TileKey key) {
    const auto found = held_.find(key);
    if (found == held_.end()) {
        return nullptr;
    }
    turns_.splice(turns_.begin(), turns_, found->second.turn);
    return &found->second.image;
}

void TileStore::ask(TileKey key) {
    if (asked_.size() < kMostAsked && asked_.insert(key).second) {
        Q_EMIT wanted(key, generation_);
    }
}

void TileStore::paint(QPainter& painter, const View& view, const plan::Placement& placement, const QRectF& part,
                      Scaling scaling) {
    if (!isOpen()) {
        return;
    }
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setRenderHint(QPainter::SmoothPixmapTransform, scaling == Scaling::Smooth);
    const QTransform base = painter.transform();
    if (!isOpen_) {
        const QTransform stretch = QTransform::fromScale(static_cast<double>(size_.columns) / glance_.width(),
                                                         static_cast<double>(size_.rows) / glance_.height());
        painter.setTransform(stretch * tileOnTable(view, placement, {}) * base);
        painter.drawImage(QPointF(0, 0), glance_);
        painter.restore();
        return;
    }
    const int level = levelFor(placement, view.zoom());
    const auto keys = tilesIn(view, placement, size_, level);
    std::set<TileKey> standIns;
    for (const TileKey key : keys) {
        if (held_.contains(key)) {
            continue;
        }
        ask(key);
        for (int up = 1; up <= kCoarsest; ++up) {
            const TileKey coarser{level + up, key.column >> up, key.row >> up};
            if (held_.contains(coarser)) {
                standIns.insert(coarser);
                break;
            }
        }
    }
    // The coarsest first, so that finer ones lie over them.
    const auto lay = [&](TileKey key) {
        const QTransform toTable = tileOnTable(view, placement, key);
        if (const QImage* image = toTable.mapRect(QRectF(0, 0, kTile, kTile)).intersects(part) ? use(key) : nullptr) {
            painter.setTransform(toTable * base);
            painter.drawImage(QPointF(0, 0), *image);
        }
    };
    std::for_each(standIns.rbegin(), standIns.rend(), lay);
    std::for_each(keys.begin(), keys.end(), lay);
    painter.restore();
}

}  // namespace crosstick::table
