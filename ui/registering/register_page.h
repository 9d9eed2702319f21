#pragma once

#include <filesystem>
#include <memory>
#include <optional>

#include <QBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTreeWidget>
#include <QWidget>

#include "core/registration/registering.h"
#include "core/sheets/sheet_file.h"
#include "ui/look/theme.h"
#include "ui/press/faces.h"
#include "ui/registering/picture_canvas.h"
#include "ui/registering/picture_search.h"
#include "ui/work/sheet_ground.h"

namespace crosstick::registering {

/// What comes of the sheet: a plan on it, or one more in the plan on the table, where it may be somebody's film.
enum class Purpose { BeginsAPlan, JoinsAPlan };

/// A scan or photo of a sheet is laid on the grid here: its collar's words, crossings that are clicked and named, those
/// found from them, and the proof of the fit. Gives the sheet when it is laid on the table.
class RegisterPage final : public QWidget {
    Q_OBJECT

  public:
    using Say = std::function<QString(const Error&)>;

    RegisterPage(work::Errands& errands, const sheets::ForeignReader& reader, Say say, const press::Faces* faces,
                 QWidget* parent = nullptr);
    ~RegisterPage() override;

    /// Begins with a picture. @param given  what is known of it already  @param newId  for the sheet
    /// @param marks  by which it was laid before
    void open(const std::filesystem::path& file, const sheets::FileReport& report, const sheets::GivenFacts& given,
              const Uuid& newId, const std::vector<plan::GridMark>& marks = {});
    void setPurpose(Purpose purpose);
    void setLight(look::Light light);
    [[nodiscard]] const registration::Registering& work() const { return *marks_; }
    [[nodiscard]] PictureCanvas& canvas() { return *canvas_; }
    [[nodiscard]] QLineEdit* entry() const { return entry_; }
    [[nodiscard]] QString told() const { return proof_->text(); }
    [[nodiscard]] QString asked() const { return asked_->text(); }
    [[nodiscard]] QString refusal() const { return refusal_->text(); }
    [[nodiscard]] bool isReading() const { return ground_.isReading() || search_->isOn(); }
    void point(registration::PixelPoint at);  ///< as a click would
    void find();
    void lay();

  Q_SIGNALS:
    void laid(const std::filesystem::path& file, const plan::Sheet& sheet);
    void left();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

  private:
    work::Errands& errands_;
    sheets::ForeignReader reader_;
    Say say_;
    std::filesystem::path file_;
    sheets::FileReport report_;
    Uuid id_;
    work::SheetGround ground_;
    std::unique_ptr<registration::Registering> marks_;
    std::optional<std::size_t> moved_;  ///< a mark that is being nudged
    std::size_t proposal_ = 0;          ///< how many proposals were passed over
    bool wantsScale_ = false;           ///< it was to be laid, and only its scale is missing
    bool isProposed_ = false;
    int round_ = 0;
    look::Light light_ = look::Light::Day;

    PictureSearch* search_;
    PictureCanvas* canvas_;
    QWidget* card_;
    QLabel *title_, *asked_, *refusal_, *proof_, *how_, *squares_;
    QLineEdit *square_, *crs_, *scale_, *entry_;
    QTreeWidget* list_;
    QPushButton *find_, *howButton_, *fits_, *film_, *lay_;

    void buildCard();
    void buildCollar(QBoxLayout* rows);
    void buildFoot(QBoxLayout* rows);
    void connectParts();
    void renew();
    void renewList();
    void renewWords();
    void showGround();
    void takeCollar();
    void takeEntry();
    void pointAt(registration::PixelPoint at);
    void snap(registration::PixelPoint at, double reach);
    void propose();
    void nudge(double right, double down);
    void hold(std::size_t mark);
    void removeHeld();
    void drop();
    /// The sheet with what was chosen besides: its paper's stretch, that it is a film.
    [[nodiscard]] plan::Sheet chosen(plan::Sheet sheet) const;
    void layStraightened(std::optional<Scale> scale);
    [[nodiscard]] registration::CrossSight sightAt(registration::PixelPoint at) const;
    [[nodiscard]] std::optional<Scale> scale() const;
    [[nodiscard]] QString howWords() const;
    /// What the scan says of its paper, where it says anything.
    [[nodiscard]] std::optional<plan::PaperStretch> stretch() const;
    [[nodiscard]] QString squaresWords() const;
    [[nodiscard]] QString rulerWords() const;
};

}  // namespace crosstick::registering
