"""The job itself, one folder a subject.

jobs/ reads the job file; shape/ has piece, layers and form; mortar/ materials, recipes and the mix; batching/ masses,
loads, weigh sheets and water; timeline/ the day, its 500 samples, drying, looks and what-ifs; curing/ the night;
after/ strength, moving, curl, finish and cost; logbook/ the shop log; rehearsal/ the practice pour. plan.py joins them,
report.py prints the plan, explain.py says where a number comes from; working.py, advice.py and problems.py are the
records that all of them use.
"""
