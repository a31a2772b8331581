import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { showError } from '../../web/errors.ts'
import { textOf, wholeOf } from '../../web/fields.ts'
import { showPage } from '../../web/page.ts'
import { acceptPhoto } from '../photos/accept.ts'
import { presentPhotos, type RefusedPhoto } from '../photos/present.ts'
import { deletedAlready, mostPhotos, noneToDelete, tooMany } from '../photos/problems.ts'
import { takeUploads, type Upload } from '../photos/upload.ts'
import type { JobParts } from '../record/parts.ts'
import { type FoundJob, findJob } from '../standing/find.ts'
import { showMissing } from './show.ts'

const view = { page: 'jobs/photos/photos' }

/** The photos of a job: the page with them, one by itself, one more, and one less. */
export async function photoRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  const { photos, now } = parts
  const show = async (
    request: FastifyRequest,
    reply: FastifyReply,
    found: FoundJob,
    refused?: RefusedPhoto,
  ) => {
    const kept = await photos.list(found.job.id)
    return showPage(request, reply, view, presentPhotos(found, kept, refused))
  }

  app.get('/jobs/:id/photos', async (request, reply) => {
    const found = await findJob(parts, request)
    return 'missing' in found ? showMissing(request, reply, found) : show(request, reply, found)
  })

  app.get('/jobs/:id/photos/:photo', async (request, reply) => {
    const [job, id] = ['id', 'photo'].map((name) => wholeOf(textOf(request.params, name)) ?? 0)
    const photo = job && id ? await photos.read(job, id) : null
    if (photo === null) return showError(request, reply, noSuchPhoto)
    const version = `"${id}-${photo.addedAt.getTime()}"`
    reply
      .type(photo.type)
      .header('content-disposition', 'inline')
      // Opened by itself it is a picture and nothing that could do anything.
      .header('content-security-policy', "default-src 'none'; sandbox")
      // It never changes, but it may be deleted: it is asked for again, and need not be sent again.
      .header('cache-control', 'private, no-cache')
      .header('etag', version)
    if (request.headers['if-none-match'] === version) return reply.code(304).send()
    return reply.send(Buffer.from(photo.bytes))
  })

  // In a scope of its own, so that no other form may carry a file.
  await app.register(async (scope) => {
    takeUploads(scope)
    scope.post('/jobs/:id/photos', async (request, reply) => {
      const found = await findJob(parts, request)
      if ('missing' in found) return showMissing(request, reply, found)
      const { id } = found.job
      const accepted = await acceptPhoto(found.kase, request.body as Upload | undefined)
      if (!accepted.ok) return show(request, reply.code(accepted.status), found, accepted)
      const { photo } = accepted
      const added = await photos.add(id, { ...photo, addedAt: now() }, mostPhotos)
      if (added !== null) return reply.redirect(`/jobs/${id}/photos`, 303)
      const refused = { check: photo.check ?? '', problem: tooMany }
      return show(request, reply.code(422), found, refused)
    })
  })

  const removals = '/jobs/:id/photo-removals'
  app.post(removals, async (request, reply) => {
    const found = await findJob(parts, request)
    if ('missing' in found) return showMissing(request, reply, found)
    const { id } = found.job
    const photo = wholeOf(textOf(request.body, 'photo'))
    const refuse = (status: 409 | 422, notice: string) =>
      show(request, reply.code(status), found, { notice })
    if (photo === null) return refuse(422, noneToDelete)
    if (!(await photos.remove(id, photo))) return refuse(409, deletedAlready)
    return reply.redirect(`/jobs/${id}/photos`, 303)
  })
  app.get(removals, (request, reply) =>
    reply.redirect(`/jobs/${encodeURIComponent(textOf(request.params, 'id'))}/photos`, 303),
  )
}

const noSuchPhoto = {
  status: 404,
  title: 'No such photo',
  says: 'This job has no photo of that number; it may have been deleted.',
}
