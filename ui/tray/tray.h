#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>
#include <QToolButton>
#include <QWidget>

#include "core/measures/meant.h"
#include "core/measures/typed_line.h"
#include "ui/look/theme.h"
#include "ui/press/faces.h"
#include "ui/table/light_table.h"
#include "ui/tray/offer.h"
#include "ui/work/work.h"

namespace crosstick::tray {

/// The measure tray: one line is typed, what it means stands under it, the best matches stand beside it as their own
/// engravings. Without a place the measure hangs on the pointer; with one Enter places it there. Lines and areas take
/// one place after the other, and an Enter without one ends them. While another tool draws, places alone are its next
/// points.
class Tray final : public QWidget {
    Q_OBJECT

  public:
    static constexpr int kHeight = 88;
    static constexpr int kRaised = 240;
    static constexpr std::size_t kOffers = 5;
    static constexpr int kRows = 3;  ///< of the raised one

    Tray(work::Work& work, table::LightTable& table, std::function<QString(const Error&)> say,
         const press::Faces* faces, QWidget* parent = nullptr);

    void setLight(look::Light light);
    /// The caret into the line, behind what was typed over the table.
    void begin(const QString& letters);
    /// Three rows by trade groups, or one of the best matches.
    void setRaised(bool raised);
    [[nodiscard]] bool isRaised() const { return raised_; }
    /// Lays down what hangs on the pointer by this tray.
    void letGo();
    void setRecent(std::vector<std::string> kinds);
    [[nodiscard]] const std::vector<std::string>& recent() const { return recent_; }

    [[nodiscard]] QLineEdit* field() const { return field_; }
    [[nodiscard]] QString meaning() const { return meaning_->text(); }
    [[nodiscard]] bool isRefused() const { return field_->property("refused").toBool(); }
    /// The matches that are shown, the best first.
    [[nodiscard]] std::vector<measures::Meant> offered() const { return offered_; }
    [[nodiscard]] std::size_t chosen() const { return chosen_; }

  Q_SIGNALS:
    void left();           ///< back to the table
    void recentChanged();  ///< another measure was placed

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void showEvent(QShowEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    /// What Enter would do.
    struct Meaning {
        QString words;
        bool enters = false;   ///< Enter does that; else there is nothing to do yet
        bool refused = false;  ///< and why it cannot be
        std::vector<geodesy::PlanePoint> places = {};
    };

    work::Work& work_;
    table::LightTable& table_;
    std::function<QString(const Error&)> say_;
    const press::Faces* faces_;
    look::Light light_ = look::Light::Day;
    QLabel *asks_, *cap_, *meaning_;
    QLineEdit* field_;
    QToolButton* all_;
    std::vector<Offer*> offers_;   ///< of the low tray
    QScrollArea* groups_;          ///< of the raised one
    std::vector<Offer*> grouped_;  ///< in it, in the order of offered_
    std::vector<measures::Meant> groupedFor_;
    std::vector<std::string> recent_;
    measures::TypedLine line_;
    std::vector<measures::Meant> offered_;
    std::size_t chosen_ = 0;
    std::optional<measures::Meant> hung_;  ///< hangs on the pointer by this tray
    Meaning means_;
    bool raised_ = false;
    bool isFresh_ = false;  ///< what was typed came to pass: a letter begins another line, a figure its next place
    bool isLong_ = false;   ///< what it means takes the room of the pictures
    const measures::Entry* picked_ = nullptr;  ///< chosen by hand, for these words
    std::string pickedFor_;

    void read();
    void renew();
    void hang();
    void lay();
    void layOffers();
    void layGroups();
    void fillGroups();
    void choose(std::size_t which);
    void pick(std::size_t which);
    void step(int by);
    void enter();
    void enterWithoutPlace();
    void enterPlaces();
    void setLine(const QString& words);
    /// Before letters come in: those that begin another line take the place of the one that came to pass.
    void makeRoomFor(const QString& letters);
    /// This tray's own line is wet, and what is typed means something else.
    [[nodiscard]] bool isDrawingAnother() const;
    void refuse(const QString& why);
    void afterPlaced();
    bool takeKey(QKeyEvent& event);
    [[nodiscard]] std::optional<measures::Meant> taken() const;
    /// Words of the measure without its number or name.
    [[nodiscard]] QString wordsAlone() const;
    [[nodiscard]] bool isOthersTool() const { return table_.isDrawing() && !hung_; }
    [[nodiscard]] std::size_t pointsSet() const;

    // What the line means (tray_meaning.cc).
    [[nodiscard]] Meaning meaningOf() const;
    [[nodiscard]] Meaning meaningForOthers(std::vector<geodesy::PlanePoint> places) const;
    [[nodiscard]] Meaning meaningForPoint(const QString& what, std::vector<geodesy::PlanePoint> places) const;
    [[nodiscard]] Meaning meaningForLine(const QString& what, std::vector<geodesy::PlanePoint> places) const;
    [[nodiscard]] Result<std::vector<geodesy::PlanePoint>> placesTyped() const;
    [[nodiscard]] std::optional<Error> numberFault(const measures::Meant& meant) const;
    [[nodiscard]] QString film() const;
};

}  // namespace crosstick::tray
