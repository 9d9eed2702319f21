#!/usr/bin/python3
"""Writes tests/data/light-2027.txt: a year's light at seven latitudes by python3-ephem, for light_test.cc.

    /usr/bin/python3 tests/sky/make_light_table.py > tests/data/light-2027.txt

Only ephem's positions are used (pressure 0: no refraction): altitudes every ten minutes, and halving where one goes
through its level. ephem's own search is asked for some dates besides and has to agree.
"""
import ephem

PLACES = [(-70, -68.5), (-45, 170.25), (-20, 24.0), (5, 0.5), (30, -97.75), (55, 82.9), (80, 20.0)]
YEAR = 2027
DAY = 86400


def observer(latitude, longitude):
    who = ephem.Observer()
    who.lat, who.lon, who.pressure, who.elevation = str(latitude), str(longitude), 0, 0
    return who


def curves(who, start):
    """Name and function of the seconds since the year began; an event is where it goes from below 0 to above."""
    sun, moon = ephem.Sun(), ephem.Moon()

    def altitude(body, limb):
        def at(seconds):
            who.date = start + seconds / DAY
            body.compute(who)
            return float(body.alt) + (body.radius if limb else 0)
        return at

    def hour_angle(seconds):
        who.date = start + seconds / DAY
        sun.compute(who)
        return float(ephem.degrees(who.sidereal_time() - sun.ra).znorm)

    centre, limb = altitude(sun, False), altitude(moon, True)
    for name, level in (("nautical", -12), ("civil", -6), ("sun", -50 / 60)):
        yield name, lambda t, h=ephem.degrees(str(level)): centre(t) - h
    yield "moon", lambda t: limb(t) - ephem.degrees("-0:34")
    yield "transit", hour_angle


def crossings(curve, days, step=600):
    before = curve(0)
    for at in range(step, days * DAY + 1, step):
        after = curve(at)
        if (before < 0) != (after < 0) and abs(after - before) < 1:
            low, high = float(at - step), float(at)
            while high - low > 0.05:
                middle = (low + high) / 2
                if (curve(middle) < 0) == (before < 0):
                    low = middle
                else:
                    high = middle
            yield before < 0, round((low + high) / 2)
        before = after


def check_with_ephems_search(who, start, name, rising, times):
    """Twenty events of middle latitudes, within a second of what ephem finds by its own search."""
    horizon = {"nautical": "-12", "civil": "-6", "sun": "-0:50", "moon": "-0:34"}
    if name == "transit" or abs(who.lat) > ephem.degrees("56"):
        return
    body = ephem.Moon() if name == "moon" else ephem.Sun()
    who.horizon = horizon[name]
    for seconds in times[:: max(1, len(times) // 20)]:
        who.date = start + (seconds - 600) / DAY
        search = who.next_rising if rising else who.next_setting
        found = (search(body, use_center=name != "moon") - start) * DAY
        assert abs(found - seconds) < 1.5, (name, who.lat, seconds, found)


def main():
    print("# Light of %d by python3-ephem %s (tests/sky/make_light_table.py)." % (YEAR, ephem.__version__))
    print("# Sun's centre at -12, -6 and -0:50 degrees and on the meridian, moon's upper limb at -0:34; no refraction.")
    print("# place LATITUDE LONGITUDE, then an event's name and its times in seconds since the year began in UTC.")
    start = ephem.Date("%d/1/1" % YEAR)
    days = int(ephem.Date("%d/1/1" % (YEAR + 1)) - start)
    ups = {"nautical": "nautical_dawn", "civil": "civil_dawn", "sun": "sunrise", "moon": "moonrise",
           "transit": "transit"}
    downs = {"nautical": "nautical_dusk", "civil": "civil_dusk", "sun": "sunset", "moon": "moonset"}
    for latitude, longitude in PLACES:
        who = observer(latitude, longitude)
        print("place %g %g" % (latitude, longitude))
        for name, curve in curves(who, start):
            found = list(crossings(curve, days))
            for rising, names in ((True, ups), (False, downs)):
                times = [seconds for up, seconds in found if up == rising]
                if name in names:
                    check_with_ephems_search(observer(latitude, longitude), start, name, rising, times)
                    print(names[name], *times)


if __name__ == "__main__":
    main()
