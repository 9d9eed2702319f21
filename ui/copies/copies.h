#pragma once

#include <functional>
#include <vector>

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QThread>
#include <QWidget>

#include "ui/look/theme.h"
#include "ui/press/film_sheet.h"
#include "ui/press/route_card_page.h"
#include "ui/work/work.h"

namespace crosstick::copies {

/// One sheet of paper that will be printed, as the printer's own drawing.
struct Sheet {
    QString name;
    press::PdfPage page;
    bool isFilm = true;
};

/// What is to be made: paper, pens, which kinds.
struct CopyWish {
    film::PaperChoice papers = film::usualPapers();
    symbols::PenMode pens = symbols::PenMode::Colour;
    geodesy::AngleUnit angles = geodesy::AngleUnit::Degrees;
};

struct MadeSheets {
    std::vector<Sheet> films, cards;
    std::vector<Error> notes;
    std::optional<Error> fault;
};

/// Films and cards of a plan. Any thread.
[[nodiscard]] MadeSheets makeSheets(const plan::Plan& plan, const CopyWish& wish, const geodesy::MagneticModel* model,
                                    const sheets::HeightSource* heights);

/// The page on the desk, at a stated scale, painted by the printer's own painter.
class PageView final : public QWidget {
    Q_OBJECT

  public:
    PageView(const press::Faces* faces, QWidget* parent);
    void show(const Sheet* sheet, look::Light light, bool onePen);
    [[nodiscard]] double scale() const;  ///< 1: true size

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    const press::Faces* faces_;
    const Sheet* sheet_ = nullptr;
    look::Light light_ = look::Light::Day;
    bool onePen_ = false;
};

/// Print preview: pages hang above, the page lies on the desk, at the right what is to be made of them.
class Copies final : public QWidget {
    Q_OBJECT

  public:
    Copies(work::Work& work, std::function<QString(const Error&)> say, const std::filesystem::path& share,
           QWidget* parent = nullptr);
    ~Copies() override;

    void setLight(look::Light light);
    void open();  ///< makes the pages of the present plan
    [[nodiscard]] bool isReady() const { return !isMaking_; }
    [[nodiscard]] std::size_t pages() const { return all_.size(); }
    void turn(int pages);
    void savePdf(const QString& films, const QString& cards);

  Q_SIGNALS:
    void left();
    void said(const QString& words);

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

  private:
    work::Work& work_;
    std::function<QString(const Error&)> say_;
    std::optional<press::Faces> faces_;
    look::Light light_ = look::Light::Day;
    MadeSheets made_;
    std::vector<const Sheet*> all_;
    int at_ = 0;
    bool isMaking_ = false;
    int round_ = 0;
    QComboBox *page_, *paper_, *printer_;
    QPushButton *onePen_, *save_, *print_, *back_;
    QLabel *title_, *seen_, *notes_, *summary_;
    PageView* view_;

    void listQueues(const QStringList& queues);
    void take(MadeSheets made);
    void showPage();
    void askAndSave();
    void print();
    [[nodiscard]] Result<std::string> bytesOf(const std::vector<Sheet>& sheets, const press::Inks& inks) const;
};

}  // namespace crosstick::copies
