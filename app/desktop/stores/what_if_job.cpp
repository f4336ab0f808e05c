#include "app/desktop/stores/what_if_job.h"

#include <QDir>
#include <filesystem>
#include <optional>

#include "app/wording/spoken.h"
#include "core/casefile/case_json.h"
#include "core/casefile/what_if.h"
#include "core/dressing/plan.h"

namespace drapewright::desktop {
namespace {

/// Of the time it takes; the rest are the forecasts themselves.
constexpr double share_of_reading = 0.8;

class Comparison {
 public:
  Comparison(const forecast::Settings& settings, const forecast::Shelf& stock,
             const std::vector<Alternative>& alternatives, const Progress& progress)
      : progress_(progress) {
    add({.title = spoken("As it is"), .change = {}, .study = {settings, stock}});
    for (const Alternative& each : alternatives) {
      casefile::WhatIf change(each.words);
      forecast::Settings changed = settings;
      change.apply(changed);
      add({.title = each.title, .change = std::move(change), .study = {changed, stock}});
    }
  }

  void read(const QDir& folder) {
    const QStringList files =
        folder.entryList({"*.json"}, QDir::Files | QDir::Readable, QDir::Name);
    if (files.isEmpty()) {
      result_->problem =
          spoken("No case file lies in this folder: expected files that end in .json.");
    }
    for (qsizetype i = 0; i < files.size(); ++i) {
      progress_.at(share_of_reading * static_cast<double>(i) / static_cast<double>(files.size()));
      read(folder, files[i]);
    }
  }

  std::shared_ptr<const WhatIfResult> compared() {
    for (std::size_t i = 0; i < variants_.size(); ++i) {
      const double part = static_cast<double>(i) / static_cast<double>(variants_.size());
      progress_.at(share_of_reading + (1 - share_of_reading) * part);
      // Its own progress is not that of the whole; it is stopped with the whole.
      result_->columns.push_back({variants_[i].title, variants_[i].study.forecast()});
    }
    progress_.at(1);
    return result_;
  }

 private:
  struct Variant {
    QString title;
    std::optional<casefile::WhatIf> change;
    forecast::Study study;
    bool changes_cases() const { return change && change->changes_cases(); }
  };

  void add(Variant variant) { variants_.push_back(std::move(variant)); }

  /// A case that fails under one alternative is left out of all: every column is of the same cases.
  void read(const QDir& folder, const QString& file) {
    try {
      const wound::Case value = casefile::read_case(
          std::filesystem::path(folder.filePath(file).toStdU16String()), Progress());
      std::vector<forecast::Patient> patients;
      for (const Variant& variant : variants_) {
        if (progress_.stop_requested()) throw Cancelled();
        wound::Case changed = value;
        if (variant.change) variant.change->apply(changed);
        patients.push_back(forecast::patient_of(
            changed, variant.study.settings(),
            [](const wound::Case& one) { return dressing::plan_dressing(one); }));
      }
      for (std::size_t i = 0; i < variants_.size(); ++i) {
        variants_[i].study.add(file.toStdString(), patients[i]);
      }
    } catch (const Cancelled&) {
      throw;
    } catch (const std::exception& error) {
      result_->faults.push_back({file, QString::fromUtf8(error.what())});
    }
  }

  const Progress& progress_;
  std::vector<Variant> variants_;
  std::shared_ptr<WhatIfResult> result_ = std::make_shared<WhatIfResult>();
};

std::shared_ptr<const WhatIfResult> compare(const QString& folder,
                                            const forecast::Settings& settings,
                                            const forecast::Shelf& stock,
                                            const std::vector<Alternative>& alternatives,
                                            const Progress& progress) {
  try {
    Comparison comparison(settings, stock, alternatives, progress);
    comparison.read(QDir(folder));
    return comparison.compared();
  } catch (const InputError& error) {
    auto result = std::make_shared<WhatIfResult>();
    result->problem = QString::fromUtf8(error.what());
    return result;
  }
}

}  // namespace

WhatIfJob::WhatIfJob(QObject* parent) : QObject(parent) {
  connect(&worker_, &Worker::progressed, this, &WhatIfJob::progressed);
  connect(&worker_, &Worker::busy_changed, this, &WhatIfJob::busy_changed);
}

void WhatIfJob::request(const QString& folder, const forecast::Settings& settings,
                        const forecast::Shelf& stock,
                        const std::vector<Alternative>& alternatives) {
  worker_.request([=, this](const Progress& progress) -> Worker::Delivery {
    return [this, result = compare(folder, settings, stock, alternatives, progress)] {
      emit finished(result);
    };
  });
}

}  // namespace drapewright::desktop
