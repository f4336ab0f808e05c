#pragma once

#include <QObject>
#include <map>
#include <memory>

#include "app/desktop/jobs/worker.h"
#include "app/desktop/photo/photo_place.h"
#include "app/desktop/photo/photograph.h"

namespace drapewright::desktop {

class CaseDocument;
class PlanView;
class TracingDesk;

/// The photograph of the assessment that is open: read, laid under the drawing, given a scale.
/// Every change of the case is a step of undo. The pictures that were opened stay here until the
/// window closes, so that undo and redo find them; a case that is saved has its own beside it.
class PhotoDesk : public QObject {
  Q_OBJECT

 public:
  PhotoDesk(CaseDocument& document, TracingDesk& tracing, QObject* parent = nullptr);

  /// Reads the file in the background.
  void open(const QString& path);
  void paste(const QImage& image);
  void remove();
  /// A quarter turn to the right; only before the picture has a scale.
  void turn();

  bool has_photo() const { return place_ != nullptr; }
  bool is_measured() const { return place_ && place_->is_measured(); }
  const PhotoPlace* place() const { return place_.get(); }
  double strength() const { return strength_; }
  void set_strength(double share);  ///< 0 to 1: how strongly it shows under the drawing

  /// Two or four places on the drawing were marked; a length has to come with them.
  void mark_length(const geometry::Ring& two);
  void mark_square(const geometry::Ring& four);
  /// The limb's middle line; its girth is the case's.
  void mark_axis(const geometry::Ring& two);
  enum class Asked { nothing, length, side };
  Asked asked() const { return asked_; }
  /// The places marked that a length is asked for, on the drawing.
  const geometry::Ring& asked_about() const { return asked_about_; }
  /// The length between the marked places, or the square's side.
  void give_length(double cm);
  /// The chosen outline laid out from the round limb onto the flat.
  void unroll();

  /// What is known of the scale, or why there is none; empty without a photograph.
  QString words() const;
  /// Writes the case's picture beside the case file. @throws InputError
  void keep_beside(const QString& case_path) const;

 signals:
  void changed();
  void failed(const QString& what, const drapewright::InputError& error);

 private:
  void follow();
  void take(const Photograph& photo);
  const Photograph* photo_of_case() const;
  void find_beside(const QString& file);
  void calibrate(const picture::Reference& reference);
  std::optional<picture::Picture> described() const;

  CaseDocument& document_;
  TracingDesk& tracing_;
  PlanView& view_;
  Worker worker_;
  std::map<QString, Photograph> photos_;
  std::unique_ptr<PhotoPlace> place_;
  QString shown_file_;
  std::optional<picture::Reference> shown_reference_;
  picture::PixelChain marked_;
  geometry::Ring asked_about_;
  Asked asked_ = Asked::nothing;
  double strength_ = 0.8;
  QString missing_;
  QString unrolled_words_;
};

}  // namespace drapewright::desktop
