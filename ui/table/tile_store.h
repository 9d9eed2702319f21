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

/// What there is of a sheet: our copy of it, or the whole at a glance until that is made, or nothing yet.
struct SheetInk {
    std::filesystem::path copy;
    std::shared_ptr<const sheets::Pixels> glance;
    RasterSize size;
    Ground ground = Ground::Map;
    friend bool operator==(const SheetInk& a, const SheetInk& b) {
        return a.copy == b.copy && a.ground == b.ground && a.glance == b.glance && a.size.columns == b.size.columns &&
               a.size.rows == b.size.rows;
    }
};

/// Reads tiles from our copies of sheets on a thread of its own, the latest asked for first.
class TileReader : public QObject {
    Q_OBJECT

  public:
    /// @param ink  with our copy of a sheet  @param theme  in whose light tiles come
    void open(std::size_t sheet, const SheetInk& ink, Theme theme, int generation);
    void close(std::size_t sheet);
    void read(crosstick::table::SheetTile tile, int generation);
    void paintGlance(std::size_t sheet, const std::shared_ptr<const sheets::Pixels>& whole, Theme theme,
                     int generation);

  Q_SIGNALS:
    void arrived(crosstick::table::SheetTile tile, const QImage& image, int generation);
    void glanced(std::size_t sheet, const QImage& whole, int generation);
    void failed(std::size_t sheet, int generation);

  private:
    struct Open {
        std::unique_ptr<FileTiles> tiles;
        int generation = 0;
    };
    std::map<std::size_t, Open> open_;
};

/// Tiles of a plan's sheets in memory, up to one cap for all; those not there are asked for and painted when they come.
/// The window's thread never waits: until a tile comes a coarser one stands in for it.
class TileStore final : public QObject {
    Q_OBJECT

  public:
    explicit TileStore(QObject* parent = nullptr, std::size_t capBytes = std::size_t{256} << 20);
    ~TileStore() override;

    /// A plan's sheets in their order; tiles of one that is as it was are kept.
    void lay(std::vector<SheetInk> sheets, Theme theme);
    [[nodiscard]] bool isOpen(std::size_t sheet) const;
    /// Lays a part of a sheet on the table from what is there, and asks for what is missing in the view.
    void paint(QPainter& painter, std::size_t sheet, const View& view, const SheetLie& lie, const QRectF& part,
               Scaling scaling);
    /// Asks for what is missing in a view that is about to be painted.
    void foresee(std::size_t sheet, const View& view, const SheetLie& lie);
    /// Takes what has been read by now, before the loop of events comes to it.
    void hear();
    [[nodiscard]] bool hasAny() const;
    [[nodiscard]] bool isWaiting() const { return !asked_.empty(); }

  Q_SIGNALS:
    void arrived(crosstick::table::SheetTile tile);
    void glanced();
    void failed(std::size_t sheet);
    void wanted(crosstick::table::SheetTile tile, int generation);

  private:
    struct Held {
        QImage image;
        std::list<SheetTile>::iterator turn;
    };
    struct Laid {
        SheetInk ink;
        QImage glance;
        int generation = 0;
    };
    std::unique_ptr<QThread> thread_;
    TileReader* reader_;
    std::vector<Laid> laid_;
    Theme theme_ = Theme::Day;
    int generations_ = 0;
    std::size_t cap_, bytes_ = 0;
    std::map<SheetTile, Held> held_;
    std::list<SheetTile> turns_;  ///< the latest used first
    std::set<SheetTile> asked_;

    void layOne(std::size_t sheet, SheetInk ink);
    void drop(std::size_t sheet);
    [[nodiscard]] bool isOf(std::size_t sheet, int generation) const;
    void take(SheetTile tile, const QImage& image, int generation);
    [[nodiscard]] const QImage* use(SheetTile tile);
    void ask(SheetTile tile);
    void paintGlance(QPainter& painter, const Laid& laid, const View& view, const SheetLie& lie) const;
};

}  // namespace crosstick::table
