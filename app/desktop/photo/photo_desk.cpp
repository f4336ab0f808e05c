#include "app/desktop/photo/photo_desk.h"

#include <QDir>
#include <QFileInfo>
#include <QTransform>
#include <algorithm>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/document/case_document.h"
#include "app/desktop/tools/tracing_desk.h"
#include "app/wording/spoken.h"
#include "core/base/error.h"
#include "core/base/numbers.h"
#include "core/casefile/text_file.h"
#include "core/geometry/measures.h"
#include "core/picture/calibration.h"
#include "core/picture/certainty.h"
#include "core/picture/limb.h"

namespace drapewright::desktop {
namespace {

using geometry::Point;
using geometry::Ring;

QString no_scale_words() {
  return spoken(
      "This photograph has no scale: nothing in it can be measured or traced yet. Mark two points "
      "on "
      "its ruler (Length) or the corners of a flat square of known side (Square).");
}

QString number(double value, int digits) {
  return QString::fromStdString(format_number(value, digits));
}

picture::PixelChain corners_of(const picture::Reference& reference) {
  if (const auto* square = std::get_if<picture::KnownSquare>(&reference)) {
    return {square->corners.begin(), square->corners.end()};
  }
  const auto& length = std::get<picture::KnownLength>(reference);
  const picture::Pixel a = length.from, b = length.to;
  const picture::Pixel across{-(b.y - a.y) / 2, (b.x - a.x) / 2};
  return {a, b, {b.x + across.x, b.y + across.y}, {a.x + across.x, a.y + across.y}};
}

}  // namespace

PhotoDesk::PhotoDesk(CaseDocument& document, TracingDesk& tracing, QObject* parent)
    : QObject(parent), document_(document), tracing_(tracing), view_(tracing.view()) {
  connect(&document, &CaseDocument::case_changed, this, &PhotoDesk::follow);
  connect(&document, &CaseDocument::case_replaced, this, &PhotoDesk::follow);
  tracing.set_gate([this] { return has_photo() && !is_measured() ? no_scale_words() : QString(); });
}

std::optional<picture::Picture> PhotoDesk::described() const {
  return document_.value().current().picture;
}

const Photograph* PhotoDesk::photo_of_case() const {
  const auto picture = described();
  if (!picture) return nullptr;
  const auto found = photos_.find(QString::fromStdString(picture->file));
  return found == photos_.end() ? nullptr : &found->second;
}

void PhotoDesk::open(const QString& path) {
  worker_.request([this, path](const Progress&) -> Worker::Delivery {
    try {
      return [this, photo = read_photograph(path)] { take(photo); };
    } catch (const InputError& error) {
      return [this, error] { emit failed(spoken("The photograph cannot be opened."), error); };
    }
  });
}

void PhotoDesk::paste(const QImage& image) {
  worker_.request([this, image](const Progress&) -> Worker::Delivery {
    try {
      return [this, photo = photograph_from(image)] { take(photo); };
    } catch (const InputError& error) {
      return [this, error] { emit failed(spoken("The photograph cannot be pasted."), error); };
    }
  });
}

void PhotoDesk::take(const Photograph& photo) {
  photos_[photo.file] = photo;
  document_.edit(spoken("photograph"), {}, [&](wound::Case& value) {
    value.current().picture = picture::Picture{.file = photo.file.toStdString(),
                                               .width_px = photo.image.width(),
                                               .height_px = photo.image.height()};
  });
  tracing_.take_up(Tool::scale_length);
}

void PhotoDesk::remove() {
  document_.edit(spoken("remove photograph"), {},
                 [](wound::Case& value) { value.current().picture.reset(); });
}

void PhotoDesk::turn() {
  const Photograph* photo = photo_of_case();
  if (photo == nullptr || is_measured()) return;
  paste(photo->image.transformed(QTransform().rotate(90)));
}

void PhotoDesk::find_beside(const QString& file) {
  missing_.clear();
  if (document_.path().isEmpty()) {
    missing_ = file;
    return;
  }
  const QString folder = QFileInfo(document_.path()).absolutePath();
  worker_.request([this, folder, file](const Progress&) -> Worker::Delivery {
    try {
      return [this, photo = read_kept_photograph(folder, file)] {
        photos_[photo.file] = photo;
        follow();
      };
    } catch (const InputError&) {
      return [this, file] {
        missing_ = file;
        emit changed();
      };
    }
  });
}

/// What is laid under the drawing follows the case, whoever changed it.
void PhotoDesk::follow() {
  const auto picture = described();
  const QString file = picture ? QString::fromStdString(picture->file) : QString();
  const auto reference = picture ? picture->reference : std::nullopt;
  const Photograph* photo = photo_of_case();
  if (file == shown_file_ && reference == shown_reference_ && (photo == nullptr) == !place_) {
    return;
  }
  if (file != shown_file_) unrolled_words_.clear();
  shown_file_ = file;
  shown_reference_ = reference;
  place_.reset();
  asked_ = Asked::nothing;
  asked_about_.clear();
  if (photo != nullptr) {
    missing_.clear();
    place_ = std::make_unique<PhotoPlace>(photo->image, reference);
  } else if (!file.isEmpty()) {
    find_beside(file);
  }
  emit changed();
  view_.update();
}

void PhotoDesk::set_strength(double share) {
  strength_ = std::clamp(share, 0.0, 1.0);
  view_.update();
}

void PhotoDesk::mark_length(const Ring& two) {
  if (!place_) return;
  marked_ = {place_->to_pixel(two.at(0)), place_->to_pixel(two.at(1))};
  asked_about_ = two;
  asked_ = Asked::length;
  emit changed();
}

void PhotoDesk::mark_square(const Ring& four) {
  if (!place_) return;
  marked_.clear();
  for (const Point& p : four) marked_.push_back(place_->to_pixel(p));
  asked_about_ = four;
  asked_ = Asked::side;
  emit changed();
}

void PhotoDesk::give_length(double cm) {
  if (asked_ == Asked::length && marked_.size() == 2) {
    calibrate(picture::KnownLength{marked_[0], marked_[1], cm, {}});
  } else if (asked_ == Asked::side && marked_.size() == 4) {
    calibrate(picture::KnownSquare{{marked_[0], marked_[1], marked_[2], marked_[3]}, cm, {}});
  }
}

void PhotoDesk::calibrate(const picture::Reference& reference) {
  try {
    picture::check(reference);
  } catch (const InputError& error) {
    emit failed(spoken("That gives no scale."), error);
    return;
  }
  asked_ = Asked::nothing;
  asked_about_.clear();
  document_.edit(spoken("scale of the photograph"), {}, [&](wound::Case& value) {
    if (value.current().picture) value.current().picture->reference = reference;
  });
  view_.fit();
  tracing_.take_up(Tool::trace);
}

void PhotoDesk::mark_axis(const Ring& two) {
  const auto picture = described();
  const auto girth = document_.value().limb_girth_cm;
  if (!place_ || !picture) return;
  if (!girth) return tracing_.say(spoken("Type the limb's girth on the left first."));
  const picture::LimbView view{.axis_from = place_->to_pixel(two.at(0)),
                               .axis_to = place_->to_pixel(two.at(1)),
                               .girth_cm = *girth};
  try {
    picture::check(view);
  } catch (const InputError& error) {
    emit failed(spoken("That is no middle line of a limb."), error);
    return;
  }
  document_.edit(spoken("middle line of the limb"), {}, [&](wound::Case& value) {
    if (value.current().picture) value.current().picture->limb = view;
  });
  tracing_.say(spoken("Trace the wound, then press Unroll."));
}

void PhotoDesk::unroll() {
  const auto picture = described();
  if (!picture || !picture->limb || !picture->reference || !tracing_.has_outline()) {
    return tracing_.say(
        spoken("Unrolling takes a scale, the limb's middle line and a traced outline."));
  }
  try {
    const picture::Calibration calibration(*picture->reference);
    const picture::Limb limb(*picture->limb, calibration,
                             {picture->width_px / 2.0, picture->height_px / 2.0});
    const Ring flat = tracing_.outline(), round = limb.unrolled(flat);
    unrolled_words_ =
        spoken("Unrolled from the limb: {1} cm\u00b2, flat in the picture {2} cm\u00b2.",
               {number(geometry::area(round), 1), number(geometry::area(flat), 1)});
    tracing_.offer(round, spoken("unroll"));
    emit changed();
  } catch (const InputError& error) {
    emit failed(spoken("The outline cannot be unrolled."), error);
  }
}

QString PhotoDesk::words() const {
  if (!missing_.isEmpty()) {
    return spoken("The photograph {1} is not beside the case. The outlines stand without it.",
                  {missing_});
  }
  if (!place_) return {};
  if (asked_ == Asked::length) return spoken("How long is it between the two points?");
  if (asked_ == Asked::side) return spoken("How long is a side of the square?");
  const auto picture = described();
  if (!picture || !picture->reference) return no_scale_words();
  QString words;
  try {
    const auto corners = corners_of(*picture->reference);
    words = spoken("Clicks 1 pixel off: {1}.",
                   {picture::in_words(
                       picture::spread_at(*picture->reference, picture->click_error_px, corners))});
  } catch (const InputError& error) {
    words = QString::fromStdString(error.problem()) + ".";
  }
  words +=
      std::holds_alternative<picture::KnownSquare>(*picture->reference)
          ? " " +
                spoken("The tilt of the camera is taken out, for what lies in the square's plane.")
          : " " + spoken(
                      "Right only for a picture taken square on: a tilt of 20\u00b0 shortens by 6 "
                      "%.");
  return unrolled_words_.isEmpty() ? words : words + " " + unrolled_words_;
}

void PhotoDesk::keep_beside(const QString& case_path) const {
  const Photograph* photo = photo_of_case();
  if (photo == nullptr) return;
  const QString path = QDir(QFileInfo(case_path).absolutePath()).filePath(photo->file);
  if (QFileInfo::exists(path)) return;  // named by its content: it is the same
  casefile::write_text(
      std::filesystem::path(path.toStdU16String()),
      std::string_view(photo->bytes.constData(), static_cast<std::size_t>(photo->bytes.size())));
}

}  // namespace drapewright::desktop
