#include "app/desktop/stores/caseload_job.h"

#include <QDir>
#include <filesystem>

#include "app/wording/spoken.h"
#include "core/casefile/case_json.h"
#include "core/dressing/plan.h"

namespace drapewright::desktop {
namespace {

/// Of the time it takes; the rest is the forecast itself.
constexpr double share_of_reading = 0.8;

class CaseloadReader {
 public:
  CaseloadReader(const QString& folder, forecast::Settings settings, forecast::Shelf stock,
                 const Progress& progress)
      : folder_(folder), study_(settings, std::move(stock)), progress_(progress) {
    result_->folder = folder;
    result_->settings = settings;
  }

  std::shared_ptr<const CaseloadResult> read() {
    const QStringList files =
        QDir(folder_).entryList({"*.json"}, QDir::Files | QDir::Readable, QDir::Name);
    if (files.isEmpty()) {
      result_->problem =
          spoken("No case file lies in this folder: expected files that end in .json.");
      return result_;
    }
    for (qsizetype i = 0; i < files.size(); ++i) {
      progress_.at(share_of_reading * static_cast<double>(i) / static_cast<double>(files.size()));
      read(files[i]);
    }
    result_->forecast = study_.forecast(Progress());
    progress_.at(1);
    result_->patients = study_.patients();
    return result_;
  }

 private:
  void read(const QString& file) {
    const std::filesystem::path path(QDir(folder_).filePath(file).toStdU16String());
    try {
      const wound::Case value = casefile::read_case(path, Progress());
      study_.add(file.toStdString(),
                 forecast::patient_of(value, study_.settings(), [](const wound::Case& one) {
                   return dressing::plan_dressing(one);
                 }));
    } catch (const std::exception& error) {  // a fault of its own, or the program's: go on
      result_->faults.push_back({file, QString::fromUtf8(error.what())});
    }
  }

  QString folder_;
  forecast::Study study_;
  const Progress& progress_;
  std::shared_ptr<CaseloadResult> result_ = std::make_shared<CaseloadResult>();
};

std::shared_ptr<const CaseloadResult> read(const QString& folder,
                                           const forecast::Settings& settings,
                                           const forecast::Shelf& stock, const Progress& progress) {
  try {
    return CaseloadReader(folder, settings, stock, progress).read();
  } catch (const InputError& error) {
    auto result = std::make_shared<CaseloadResult>();
    result->folder = folder;
    result->problem = QString::fromUtf8(error.what());
    return result;
  }
}

}  // namespace

CaseloadJob::CaseloadJob(QObject* parent) : QObject(parent) {
  connect(&worker_, &Worker::progressed, this, &CaseloadJob::progressed);
  connect(&worker_, &Worker::busy_changed, this, &CaseloadJob::busy_changed);
}

void CaseloadJob::request(const QString& folder, const forecast::Settings& settings,
                          const forecast::Shelf& stock) {
  worker_.request([=, this](const Progress& progress) -> Worker::Delivery {
    return [this, result = read(folder, settings, stock, progress)] { emit finished(result); };
  });
}

}  // namespace drapewright::desktop
