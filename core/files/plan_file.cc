// plan_file
