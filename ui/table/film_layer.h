#pragma once

#include <filesystem>
#include <map>
#include <optional>

#include <QImage>
#include <QObject>
#include <QThread>

#include "ui/press/kept_letters.h"
#include "ui/table/film_painter.h"
#include "ui/table/inker.h"
#include "ui/table/palette.h"
#include "ui/table/scene.h"
#include "ui/table/tile_painter.h"
#include "ui/work/film_look.h"

namespace crosstick::table {

/// What the films' picture is to show: the films of a scene, each with its own look, in one view.
struct FilmOrder {
    std::shared_ptr<const Scene> scene;  ///< the same pointer means the same ink
    std::map<plan::FilmId, work::FilmLook> looks;
    std::optional<View> view;
    double deviceRatio = 1;
    Theme theme = Theme::Day;
    int number = 0;
};

/// The films as one picture, with the view that it shows.
struct FilmPicture {
    QImage image;  ///< premultiplied, of the whole area of the view
    std::optional<View> view;
    std::optional<GridBox> ground;       ///< of what is inked, while the scene was new
    std::optional<drawing::Box> window;  ///< of the working film, in its millimetres
    std::optional<GridBox> windowGround;
    std::shared_ptr<const std::vector<FilmInk>> films;  ///< what is painted, the working film last
    int number = 0;
};

/// The films under the working one, painted: kept while a hand draws on the film above them.
struct Below {
    QImage image;
    std::optional<FilmOrder> order;
    std::vector<FilmInk> films;
};

/// Engraves and paints films on a thread of its own. An order that was overtaken is dropped.
class FilmWorker : public QObject {
    Q_OBJECT

  public:
    explicit FilmWorker(std::filesystem::path share) : share_(std::move(share)) {}
    void make(const crosstick::table::FilmOrder& order);

  Q_SIGNALS:
    void made(const crosstick::table::FilmPicture& picture);
    void failed(const QString& fault);

  private:
    std::filesystem::path share_;
    std::optional<press::Faces> faces_;
    std::shared_ptr<const Scene> scene_;
    Inker inker_;
    std::shared_ptr<const std::vector<FilmInk>> ink_;
    Below below_;
    press::KeptLetters letters_;

    [[nodiscard]] QImage paintedFilms(const FilmOrder& order);
};

/// The films' picture as the table needs it: ordered anew when plan or view change, laid on moved and scaled until the
/// new one is there.
class FilmLayer final : public QObject {
    Q_OBJECT

  public:
    explicit FilmLayer(const std::filesystem::path& share, QObject* parent = nullptr);
    ~FilmLayer() override;

    void order(FilmOrder order);
    void clear();
    void paint(QPainter& painter, const View& view, Scaling scaling) const;
    /// Does the picture reach over the whole of a view?
    [[nodiscard]] bool covers(const View& view) const;
    [[nodiscard]] const FilmPicture& picture() const { return picture_; }
    /// The picture is that of the last order.
    [[nodiscard]] bool isUpToDate() const { return !isBusy_ && !waiting_; }

  Q_SIGNALS:
    void changed();
    void failed(const QString& fault);
    void wanted(const crosstick::table::FilmOrder& order);

  private:
    QThread thread_;
    FilmWorker* worker_;
    FilmPicture picture_;
    std::optional<FilmOrder> waiting_;
    bool isBusy_ = false;
    int number_ = 0;
    int oldest_ = 0;  ///< pictures of orders before this one are of another plan

    void send();
};

}  // namespace crosstick::table
