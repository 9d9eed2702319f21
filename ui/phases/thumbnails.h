#pragma once

#include <atomic>
#include <filesystem>
#include <map>
#include <memory>
#include <optional>

#include <QImage>
#include <QObject>
#include <QThread>

#include "ui/press/faces.h"
#include "ui/table/inker.h"
#include "ui/table/palette.h"
#include "ui/table/view.h"
#include "ui/work/film_look.h"

namespace crosstick::phases {

/// What the pictures of a plan's films are made from.
struct ThumbnailOrder {
    table::Scene scene;  ///< with every film of the plan
    std::map<plan::FilmId, work::FilmLook> looks;
    std::filesystem::path sheet;  ///< our copy of the first sheet; empty: none to be shown
    QSize size;                   ///< logical pixels
    double deviceRatio = 1;
    table::Theme theme = table::Theme::Day;
    int number = 0;
};

/// Paints films small, on a thread of its own that stands behind the window's. What was painted already and has not
/// changed is not painted again; an order that was overtaken is left where it is.
class ThumbnailWorker final : public QObject {
    Q_OBJECT

  public:
    ThumbnailWorker(std::filesystem::path share, const std::atomic<int>& newest)
        : share_(std::move(share)), newest_(newest) {}
    void make(const crosstick::phases::ThumbnailOrder& order);

  Q_SIGNALS:
    void made(const crosstick::plan::FilmId& film, const QImage& picture);
    void madeSheet(const QImage& picture);

  private:
    /// What a picture was painted from.
    struct Painted {
        std::shared_ptr<const symbols::EngravedFilm> engraved;
        work::FilmLook look;
        table::GridBox ground;
    };
    std::filesystem::path share_;
    const std::atomic<int>& newest_;
    std::optional<press::Faces> faces_;
    table::Inker inker_;
    std::map<plan::FilmId, Painted> painted_;
    std::filesystem::path sheet_;
    QSize size_;
    double deviceRatio_ = 0;
    std::optional<table::Theme> theme_;

    void makeFilms(const ThumbnailOrder& order);
    void makeSheet(const ThumbnailOrder& order);
};

/// The films of a plan as small pictures, each the film's own engraving, and its sheet.
class Thumbnails final : public QObject {
    Q_OBJECT

  public:
    explicit Thumbnails(const std::filesystem::path& share, QObject* parent = nullptr);
    ~Thumbnails() override;
    void order(ThumbnailOrder order);
    /// Nothing is made any more of what was ordered.
    void leave();
    [[nodiscard]] QImage of(const plan::FilmId& film) const;  ///< null until it is there
    [[nodiscard]] const QImage& sheet() const { return sheet_; }

  Q_SIGNALS:
    void changed(const crosstick::plan::FilmId& film);
    void sheetChanged();
    void wanted(const crosstick::phases::ThumbnailOrder& order);

  private:
    QThread thread_;
    std::atomic<int> newest_ = 0;
    ThumbnailWorker* worker_;
    std::map<plan::FilmId, QImage> pictures_;
    QImage sheet_;
};

}  // namespace crosstick::phases
