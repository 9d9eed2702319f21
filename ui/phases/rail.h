#pragma once

#include <optional>
#include <vector>

#include <QAbstractButton>
#include <QWidget>

#include "ui/look/theme.h"
#include "ui/work/work.h"

namespace crosstick::phases {

/// A numbered square: one phase. The chosen one is inked.
class PhaseSquare final : public QAbstractButton {
    Q_OBJECT

  public:
    PhaseSquare(int number, const QString& name, const look::Light& light, QWidget* parent);
    [[nodiscard]] int number() const { return number_; }
    [[nodiscard]] QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    int number_;
    QString name_;
    const look::Light& light_;
};

/// A film's tab with its clipped corner and the notches of its place in the set.
class FilmTab final : public QAbstractButton {
    Q_OBJECT

  public:
    FilmTab(const plan::Film& film, int place, work::FilmLook look, const look::Light& light, QWidget* parent);
    [[nodiscard]] const plan::FilmId& film() const { return film_; }
    [[nodiscard]] QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    plan::FilmId film_;
    int place_;
    work::FilmLook look_;
    const look::Light& light_;
};

/// The phase rail, rolled up: phases as squares, the films of the chosen one hang under it as tabs.
class Rail final : public QWidget {
    Q_OBJECT

  public:
    explicit Rail(work::Work& work, QWidget* parent = nullptr);
    void setLight(look::Light light);
    /// Makes the parts anew; who had the keyboard keeps it.
    void renew();

  Q_SIGNALS:
    void filmMenuWanted(const crosstick::plan::FilmId& film, const QPoint& at);
    void filmWanted();  ///< a new one

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    /// Whether a part of the rail has the keyboard, and which: parts come and go, phases and films stay.
    struct Focus {
        std::optional<int> phase;
        std::optional<plan::FilmId> film;
    };
    [[nodiscard]] Focus focus() const;
    void giveBack(const Focus& focus);
    void hang();
    void hangFilms();
    void hangPart(QWidget* part);

    work::Work& work_;
    look::Light light_ = look::Light::Day;
    std::vector<QWidget*> parts_;
    // What the parts were made from, only to be compared: a list of the plan is never changed in place.
    const std::vector<plan::FilmPtr>* films_ = nullptr;
    const std::vector<plan::Phase>* phases_ = nullptr;
};

}  // namespace crosstick::phases
