"""A class without a server: the class file and its roster, numbers for each learner, hand-ins read from strangers, marks, pages and tables."""
