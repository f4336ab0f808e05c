# OpenCV::imgproc: the part of OpenCV that the reference tests compare with. OpenCV's own package
# file checks for every module it was ever built with, so it needs all of libopencv-dev; headers
# and two libraries are enough here.
find_path(OpenCVImgproc_INCLUDE_DIR opencv2/imgproc.hpp PATH_SUFFIXES opencv4)
find_library(OpenCVImgproc_LIBRARY opencv_imgproc)
find_library(OpenCVImgproc_CORE_LIBRARY opencv_core)
include(FindPackageHandleStandardArgs)
find_package_handle_standard_args(OpenCVImgproc REQUIRED_VARS OpenCVImgproc_LIBRARY
                                  OpenCVImgproc_CORE_LIBRARY OpenCVImgproc_INCLUDE_DIR)
if(OpenCVImgproc_FOUND AND NOT TARGET OpenCV::imgproc)
  add_library(OpenCV::imgproc INTERFACE IMPORTED)
  set_target_properties(OpenCV::imgproc PROPERTIES
    INTERFACE_INCLUDE_DIRECTORIES ${OpenCVImgproc_INCLUDE_DIR}
    INTERFACE_LINK_LIBRARIES "${OpenCVImgproc_LIBRARY};${OpenCVImgproc_CORE_LIBRARY}")
endif()
mark_as_advanced(OpenCVImgproc_INCLUDE_DIR OpenCVImgproc_LIBRARY OpenCVImgproc_CORE_LIBRARY)
