#pragma once

#include <filesystem>
#include <list>
#include <map>
#include <optional>
#include <set>

#include <QImage>
#include <QObject>
#include <QThread>

#include "ui/table/tile_painter.h"

namespace crosstick::table {

/// Reads tiles from our copy of a sheet on a thread of its own, the latest asked for first.
class TileReader : public QObject {
    Q_OBJECT

  public:
    /// @param file  our copy of the sheet  @param theme  in whose light tiles come
    void open(const std::filesystem::path& file, Theme theme, int generation);
    void read(crosstick::table::TileKey key, int generation);
    void paintGlance(const std::shared_ptr<const sheets::Pixels>& whole, Theme theme, int generation);

  Q_SIGNALS:
    void arrived(crosstick::table::TileKey key, const QImage& image, int generation);
    void glanced(const QImage& whole, int generation);
    void failed(const QString& fault, int generation);

  private:
    std::unique_ptr<FileTiles> tiles_;
    int generation_ = 0;
};

/// Tiles in memory, up to a cap; those not there are asked for and painted when they come. The window's thread never
/// waits: until a tile comes a coarser one stands in for it.
class TileStore final : public QObject {
    Q_OBJECT

  public:
    explicit TileStore(QObject* parent = nullptr, std::size_t capBytes = std::size_t{256} << 20);
    ~TileStore() override;

    /// @param copy  of the sheet, in our cache
    void open(const std::filesystem::path& copy, RasterSize size, Theme theme);
    /// Shows the whole at a glance, a picture of any size, until it is opened.
    void glance(const std::shared_ptr<const sheets::Pixels>& whole, RasterSize size, Theme theme);
    void close();
    [[nodiscard]] bool isOpen() const { return isOpen_ || !glance_.isNull(); }
    [[nodiscard]] RasterSize size() const { return size_; }
    /// Lays a part of the sheet on the table from what is there, and asks for what is missing in the view.
    void paint(QPainter& painter, const View& view, const plan::Placement& placement, const QRectF& part,
               Scaling scaling);
    [[nodiscard]] bool hasAny() const { return !held_.empty() || !glance_.isNull(); }
    [[nodiscard]] bool isWaiting() const { return !asked_.empty(); }

  Q_SIGNALS:
    void arrived(crosstick::table::TileKey key);
    void glanced();
    void failed(const QString& fault);
    void wanted(crosstick::table::TileKey key, int generation);

  private:
    struct Held {
        QImage image;
        std::list<TileKey>::iterator turn;
    };
    QThread thread_;
    TileReader* reader_;
    RasterSize size_;
    QImage glance_;
    bool isOpen_ = false;
    int generation_ = 0;
    std::size_t cap_, bytes_ = 0;
    std::map<TileKey, Held> held_;
    std::list<TileKey> turns_;  ///< the latest used first
    std::set<TileKey> asked_;

    void take(TileKey key, const QImage& image, int generation);
    [[nodiscard]] const QImage* use(TileKey key);
    void ask(TileKey key);
};

}  // namespace crosstick::table
