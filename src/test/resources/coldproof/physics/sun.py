# Makes sun-times.csv and sun-positions.csv in the current folder. Run: python3 sun.py (needs PyEphem, a numerical ephemeris).
# Horizon without refraction (pressure 0), height of the sun's centre -0.833 deg for rise and set, -6 deg for twilight.
import ephem
import random

random.seed(20260114)


def written(moment):
    return ephem.Date(moment).datetime().strftime("%Y-%m-%dT%H:%M:%SZ")


def observer(latitude, longitude):
    o = ephem.Observer()
    o.lat, o.lon, o.elevation, o.pressure = str(latitude), str(longitude), 0, 0
    return o


def event(o, noon, height, rising):
    o.horizon = str(height)
    o.date = noon
    try:
        moment = (o.previous_rising if rising else o.next_setting)(ephem.Sun(), use_center=True)
        return written(moment) if abs(moment - noon) < 0.5 else ""
    except (ephem.AlwaysUpError, ephem.NeverUpError):
        return ""


def header(what, columns):
    return (f"# {what}\n# Made by sun.py beside this file with PyEphem {ephem.__version__} (Debian python3-ephem), digits trusted to 1 s.\n"
            f"{columns}\n")


cases = [(2026, 1, 14, 47.0, 11.0), (2026, 6, 21, 65.0, 25.5), (2026, 12, 21, 65.0, 25.5), (2026, 3, 20, 0.0, 0.0), (2027, 1, 5, -54.8, -68.3),
         (2026, 7, 1, -33.9, 151.2), (2026, 1, 14, 40.0, -105.3), (2024, 2, 29, 60.2, 24.9), (2026, 6, 21, 70.0, 25.0), (2026, 12, 21, 70.0, 25.0)]
cases += [(random.randint(1990, 2060), random.randint(1, 12), random.randint(1, 28), round(random.uniform(-65, 65), 2),
           round(random.uniform(-180, 180), 2)) for _ in range(40)]
with open("sun-times.csv", "w") as out:
    out.write(header("Dawn, sunrise, noon, sunset, dusk (UTC) by date and place; empty where there is none.",
                     "date,latitude,longitude,dawn,sunrise,noon,sunset,dusk"))
    for year, month, day, latitude, longitude in cases:
        o = observer(latitude, longitude)
        guess = ephem.Date((year, month, day, 12, 0, 0)) - longitude / 360
        o.date = guess - 0.1
        noon = o.next_transit(ephem.Sun())
        if noon - guess > 0.2:
            noon = o.previous_transit(ephem.Sun())
        cells = [event(o, noon, -6, True), event(o, noon, -0.833, True), written(noon), event(o, noon, -0.833, False), event(o, noon, -6, False)]
        out.write(f"{year:04d}-{month:02d}-{day:02d},{latitude},{longitude}," + ",".join(cells) + "\n")
with open("sun-positions.csv", "w") as out:
    out.write(header("Height and azimuth of the sun's centre in degrees, no refraction.", "moment,latitude,longitude,elevation,azimuth"))
    for _ in range(60):
        latitude, longitude = round(random.uniform(-89, 89), 2), round(random.uniform(-180, 180), 2)
        o = observer(latitude, longitude)
        o.date = ephem.Date((random.randint(1960, 2090), 1, 1)) + random.uniform(0, 365)
        o.date = ephem.Date(written(o.date)[:-1].replace("T", " ").replace("-", "/"))
        sun = ephem.Sun(o)
        out.write(f"{written(o.date)},{latitude},{longitude},{float(sun.alt) * 57.29577951308232:.4f},{float(sun.az) * 57.29577951308232:.4f}\n")
